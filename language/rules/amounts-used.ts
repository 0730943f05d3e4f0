// Rules of amounts: what was used against what the seams take.
import { beadOf, tapePieces } from '../measure/index.ts';
import type { Located } from '../resolve/located.ts';
import type { Material, RigView, Sealant, Tape } from '../resolve/types.ts';
import type { Amount } from '../statements/slots/amounts.ts';
import { lengthText, volumeText } from '../values/display.ts';
import { family } from './rule.ts';

const rules = {
  'used-too-little': {
    severity: 'warning',
    title: 'Less material was used than the seams take',
    why: 'Below 0.6 of the take-off the bead is thin or short. That is the serious side.',
    fix: 'None: the figure, or the bead, is to be looked at.',
    source: 'common practice',
  },
  'used-too-much': {
    severity: 'information',
    title: 'More material was used than the seams take',
    why: 'Above 1.6 of the take-off, a part-used container allowed for, a seam is missing from the record or the bead is too thick.',
    fix: 'None: only the writer knows what else was done.',
    source: 'common practice',
  },
} as const;

/**
 * An amount in the unit of its take-off: millilitres of sealant, nanometres of tape; undefined where a size is not known.
 * `largest` is the largest whole container: what was left in one is not known, while a length or half a roll is measured.
 */
function amountOf(
  used: readonly Amount[],
  material: Sealant | Tape,
): { readonly sum: number; readonly largest: number } | undefined {
  let sum = 0;
  let largest = 0;
  for (const one of used) {
    const each = sizeOf(one, material);
    if (each === undefined) return undefined;
    const count = one.kind === 'counted' ? one.counted.count : 1;
    sum += each * count;
    if (one.kind === 'counted' && Number.isInteger(count)) largest = Math.max(largest, each);
  }
  return { sum, largest };
}

function sizeOf(one: Amount, material: Sealant | Tape): number | undefined {
  const only = (sizes: readonly number[]) => (new Set(sizes).size === 1 ? sizes[0] : undefined);
  if (material.kind === 'tape') {
    if (one.kind === 'length') return one.length.nm;
    return one.kind === 'counted' && one.counted.noun === 'roll'
      ? (one.length?.nm ?? only(material.rolls.map(({ size }) => size.nm)))
      : undefined;
  }
  if (one.kind === 'volume') return one.volume.mL;
  return one.kind === 'counted' && (one.counted.noun === 'cartridge' || one.counted.noun === 'tube')
    ? (one.volume?.mL ?? only(material.cartridges.map(({ size }) => size.mL)))
    : undefined;
}

/** What the seams of a record take of a material; undefined where one of them cannot be measured. */
function takeOff(
  view: RigView,
  places: RigView['rig']['events'][number]['places'],
  material: Sealant | Tape,
): number | undefined {
  const { rig } = view;
  const system = rig.policy.units.value;
  let sum = 0;
  for (const place of places) {
    const item = rig.items.find(({ name }) => name === place.item);
    if (!item) return undefined;
    const stretch = place.from === undefined || place.to === undefined ? undefined : { from: place.from, to: place.to };
    if (material.kind === 'sealant') {
      const bead = beadOf(item, rig.roof, rig.policy, material, stretch, system);
      if (!bead.ok) return undefined;
      sum += bead.value.volume.mL;
    } else {
      const pieces = tapePieces(item, rig, rig.policy, material, stretch, system);
      if (!pieces.ok) return undefined;
      for (const piece of pieces.value.pieces) sum += piece.nm;
    }
  }
  return sum;
}

const isLaid = (material: Material | undefined): material is Sealant | Tape =>
  material?.kind === 'sealant' || material?.kind === 'tape';

export const amountsUsed = family(rules, function* ({ view, dates }): Iterable<
  Located & { readonly rule: keyof typeof rules }
> {
  const { rig } = view;
  const system = rig.policy.units.value;
  for (const event of rig.events) {
    const { record } = event;
    if ((record.word !== 'sealed' && record.word !== 'taped') || event.last > dates.asOf) continue;
    const laid = (record.materials ?? []).filter(({ name }) => isLaid(view.material(name)));
    const [one] = laid;
    if (laid.length !== 1 || !one?.used) continue;
    const material = view.material(one.name);
    if (!isLaid(material) || event.places.some(({ item }) => rig.unread.all || rig.unread.items.has(item))) continue;
    const used = amountOf(one.used, material);
    const need = used && takeOff(view, event.places, material);
    if (!used || !need) continue;
    const text = (amount: number) =>
      material.kind === 'sealant' ? volumeText(amount, system) : lengthText(amount, system);
    const here = { file: event.file, at: one.at, ...(event.places[0] ? { item: event.places[0].item } : {}) };
    if (used.sum < 0.6 * need)
      yield {
        ...here,
        rule: 'used-too-little',
        message: `${text(used.sum)} of ${one.name} was used; the seams take ${text(need)}. Is the bead thin, or a figure missing?`,
      };
    else if (used.sum - used.largest > 1.6 * need)
      yield {
        ...here,
        rule: 'used-too-much',
        message: `${text(used.sum)} of ${one.name} was used; the seams take ${text(need)}. Is a seam missing from this record?`,
      };
  }
});
