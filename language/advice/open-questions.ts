// What is not known of a seam, and what would change the advice on it.

import { moistureLevels } from '../seams/moisture.ts';
import { addPeriod } from '../values/calendar.ts';
import type { Facts } from './facts.ts';
import { tapeFrom } from './limits.ts';
import { on } from './reasons.ts';
import type { AdviceRow } from './row.ts';

/** What is not known and would matter, in sentences. */
export function unknownOf(facts: Facts): readonly string[] {
  const { stretch, item, seam, sides, ground, scene } = facts;
  const { rig, surface } = scene.view;
  const out: string[] = [];
  if (seam.unread) out.push('Lines about it could not be read: nothing is concluded from what is missing.');
  if (!stretch.looked) out.push('No look at it is on record.');
  else if (addPeriod(stretch.looked.last, rig.policy.inspect.value) < scene.dates.asOf)
    out.push(`Not looked at since ${stretch.looked.last}.`);
  if (stretch.notSeen) out.push(`Not seen ${on(stretch.notSeen.last)}: how it looks now is not known.`);
  if (seam.role === 'open') return out;
  if (seam.role === 'sealed' && ground.kind === 'sealant' && ground.layer?.known !== 'named') {
    out.push(
      ground.layer?.known === 'unknown'
        ? 'Nobody knows what sealant lies on it.'
        : 'What sealant lies on it is not recorded.',
    );
  }
  if (sides.length === 0) out.push('What it lies on is not recorded.');
  else if (!item.between && (item.kind === 'opening' || item.kind === 'mount') && item.surface === undefined)
    out.push('What the part is made of is not recorded.');
  for (const name of sides) if (!surface(name)) out.push(`Nothing is known of the surface ${name}.`);
  if (item.partLife && !facts.part) out.push('When the part was fitted is not recorded.');
  const work = stretch.condition?.word === 'renewed' ? stretch.condition.event : undefined;
  if (work && 'surfaceTemperature' in work.record === false && ['sealed', 'taped'].includes(work.record.word))
    out.push(`The surface temperature was not recorded when it was ${work.record.word} ${on(work)}.`);
  return out;
}

/** What would change the advice, in sentences: the row's own, then what the records leave open. */
export function changesOf(row: AdviceRow, facts: Facts): readonly string[] {
  const { call, coats, item, ground, scene, action } = { ...facts, action: row.action };
  const out = [...(row.changes ?? [])];
  const waiting = action === 'leave' || action === 'look again';
  if (call !== undefined) {
    out.push(
      call === 're-read'
        ? `A second reading below ${moistureLevels.reread} % settles the damp; one of ${moistureLevels.decay} % or more, or 4 points up, asks for its source.`
        : `A reading of ${moistureLevels.tooWet} % or less, once the source is found, lets it be closed up; one below ${moistureLevels.reread} % settles the damp.`,
    );
  }
  const unnamed = ground.kind === 'sealant' && ground.layer?.known !== 'named';
  if (facts.seam.role === 'sealed' && (coats.unknown || unnamed))
    out.push(`If you know the sealant, a line \`found … ${item.name} with NAME\` says so, and its coats are counted.`);
  const tape = tapeFrom(facts);
  if (tape) out.push(`Once the sealant has cured (${tape.safe}), tape is allowed as well.`);
  const hard = scene.dues.find((due) => due.kind === 'look-hard' && due.item === item.name);
  const material = ground.layer?.material === undefined ? undefined : scene.view.material(ground.layer.material);
  if (waiting && hard && hard.status !== 'not-due' && material?.kind === 'sealant' && material.lookHard) {
    const moved = addPeriod(scene.dates.asOf, material.lookHard.value);
    if (moved > hard.date)
      out.push(`A sound finding today moves the date to look at it hard from ${hard.date} to ${moved}.`);
  }
  return [...new Set(out)];
}
