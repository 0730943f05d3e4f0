/** Sets of reachable sums as bits: bit `s` of the block that starts at word `at` says that sum `s` can be made. */

/** Words needed for the sums 0..`limit`. */
export function wordsFor(limit: number): number {
  return (limit >>> 5) + 1;
}

/** Adds to the set every sum that 1..`copies` further pieces of `length` make. Sums past the block are dropped. */
export function addCopies(sets: Int32Array, at: number, words: number, length: number, copies: number): void {
  let chunk = 1;
  for (let open = copies; open > 0; ) {
    const size = Math.min(chunk, open);
    shiftInto(sets, at, words, length * size);
    open -= size;
    chunk *= 2;
  }
}

function shiftInto(sets: Int32Array, at: number, words: number, shift: number): void {
  const far = Math.floor(shift / 32);
  const bits = shift % 32;
  for (let word = words - 1; word >= far; word--) {
    const from = at + word - far;
    let moved = sets[from]! << bits;
    if (bits > 0 && word > far) moved |= sets[from - 1]! >>> (32 - bits);
    sets[at + word]! |= moved;
  }
}

/** Whether some sum from `low` to `high` (`high` inside the block) can be made. */
export function anyBetween(sets: Int32Array, at: number, low: number, high: number): boolean {
  if (low <= 0) return true;
  const first = low >>> 5;
  const last = high >>> 5;
  const head = -1 << (low & 31);
  const tail = -1 >>> (31 - (high & 31));
  if (first === last) return (sets[at + first]! & head & tail) !== 0;
  if ((sets[at + first]! & head) !== 0) return true;
  for (let word = first + 1; word < last; word++) if (sets[at + word] !== 0) return true;
  return (sets[at + last]! & tail) !== 0;
}

/** The greatest sum up to `high` that can be made; 0 always can. */
export function highestUpTo(sets: Int32Array, at: number, high: number): number {
  let word = high >>> 5;
  let bits = sets[at + word]! & (-1 >>> (31 - (high & 31)));
  while (bits === 0) {
    word--;
    bits = sets[at + word]!;
  }
  return word * 32 + 31 - Math.clz32(bits);
}

/** The least sum from `low` to `high` that can be made, or undefined. */
export function lowestFrom(sets: Int32Array, at: number, low: number, high: number): number | undefined {
  for (let word = low >>> 5; word <= high >>> 5; word++) {
    const bits = sets[at + word]! & (word === low >>> 5 ? -1 << (low & 31) : -1);
    if (bits === 0) continue;
    const sum = word * 32 + 31 - Math.clz32(bits & -bits);
    return sum <= high ? sum : undefined;
  }
  return undefined;
}

/** Whether exactly `sum` can be made. */
export function has(sets: Int32Array, at: number, sum: number): boolean {
  return (sets[at + (sum >>> 5)]! & (1 << (sum & 31))) !== 0;
}
