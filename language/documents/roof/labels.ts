// Where the names of items stand so that they cover neither items nor one another.
import { shortened } from '../sheets/shown.ts';
import { type Box, overlap } from './paper.ts';

export interface Label {
  readonly text: string;
  /** Left end and foot of the text, on paper. */
  readonly x: number;
  readonly y: number;
}

/** Height of the letters on paper, and the usual width of one, in millimetres. */
export const letters = 2.4;
const letterWidth = letters * 0.54;

export const widthOf = (text: string, size: number = letters): number => [...text].length * size * 0.54;

/** What asks for a name: its box on paper. `must`: it is written even where it covers something. */
export interface Named {
  readonly name: string;
  readonly box: Box;
  readonly must: boolean;
}

/** Labels in the order of what asks, each at the first of its places that is free and inside the frame. */
export function labelsFor(all: readonly Named[], taken: readonly Box[], frame: Box): readonly Label[] {
  const used: Box[] = [...taken];
  return all.flatMap(({ name, box, must }) => {
    const text = shortened(name, 22);
    const w = [...text].length * letterWidth;
    const places = candidates(box, w).filter((place) => inside(place, frame));
    const free = places.find((place) => !used.some((other) => overlap(place, other)));
    const place = free ?? (must ? (places[1] ?? places[0]) : undefined);
    if (place === undefined) return [];
    used.push(place);
    return [{ text, x: place.x, y: place.y + letters * 0.8 }];
  });
}

function candidates({ x, y, w, h }: Box, wide: number): readonly Box[] {
  const gap = 0.7;
  const at = (left: number, top: number): Box => ({ x: left, y: top, w: wide, h: letters });
  const middle = x + w / 2 - wide / 2;
  const [above, below, level] = [y - gap - letters, y + h + gap, y + h / 2 - letters / 2];
  return [
    at(middle, below),
    at(middle, above),
    at(x + w + gap, level),
    at(x - gap - wide, level),
    at(x, below),
    at(x, above),
    at(x + w - wide, below),
    at(x + w - wide, above),
    at(x + w + gap, below),
    at(x + w + gap, above),
    at(x - gap - wide, below),
    at(x - gap - wide, above),
    at(x + w + 3.5, level),
    at(x - 3.5 - wide, level),
    at(middle, below + letters + 0.4),
    at(middle, above - letters - 0.4),
  ];
}

const inside = (a: Box, frame: Box) =>
  a.x >= frame.x && a.y >= frame.y && a.x + a.w <= frame.x + frame.w && a.y + a.h <= frame.y + frame.h;

/** A text in lines of at most so many millimetres; words that are longer are broken. */
export function wrapped(text: string, width: number, size: number = letters): readonly string[] {
  const most = Math.max(8, Math.floor(width / (size * 0.54)));
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((one) => chunks(one, most))) {
    const next = line === '' ? word : `${line} ${word}`;
    if ([...next].length > most) {
      lines.push(line);
      line = word;
    } else line = next;
  }
  return line === '' ? lines : [...lines, line];
}

function chunks(word: string, most: number): readonly string[] {
  const characters = [...word];
  const out: string[] = [];
  for (let i = 0; i < characters.length; i += most) out.push(characters.slice(i, i + most).join(''));
  return out;
}
