// A generated rig as `.rig` text: its own block, and its histories where they stand in files of their own.
import type { Done, GeneratedRig, Look, Plan } from './records.ts';

const said = (word: string, value: string | undefined) => (value === undefined ? '' : ` ${word} ${value}`);
const quoted = (word: string, value: string | undefined) => (value === undefined ? '' : ` ${word} "${value}"`);

function lookLine(look: Look): string {
  const stretch = look.from === undefined ? '' : ` from ${look.from} to ${look.to}`;
  return `    ${look.seam.padEnd(11)} ${look.condition}${stretch}${said('moisture', look.moisture)}${quoted('inside', look.inside)}${quoted('note', look.note)}`;
}

/** One record, over several lines where it has findings. */
export function doneLines(done: Done): string[] {
  const span = ['stored', 'trip'].includes(done.verb) ? ` to ${done.until}` : '';
  const head = [
    `  ${done.verb.padEnd(9)} ${done.date}${span}${done.time ? ` ${done.time}` : ''}`,
    done.seams ? ` ${done.seams.join(', ')}` : '',
    quoted('inside', done.inside),
    said('suspect', done.suspect),
    span === '' ? said('until', done.until) : '',
    said('moisture', done.moisture),
    ...(done.with ?? []).map((material) => ` with ${material}`),
    quoted('lot', done.lot),
    said('air', done.air),
    said('surface', done.surface),
    said('humidity', done.humidity),
    said('took', done.took),
    quoted('by', done.by),
    quoted('note', done.note),
  ].join('');
  return done.looks ? [`${head} {`, ...done.looks.map(lookLine), '  }'] : [head];
}

const planLine = (plan: Plan) =>
  `  ${plan.verb.padEnd(9)}${plan.seams ? ` ${plan.seams.join(', ')}` : ''}${said('with', plan.with?.join(', '))}${said('after', plan.after)}${said('before', plan.before)}`;

/** The file of a rig. `uses` are the files that it names; `claims` the pattern of its histories, if they stand elsewhere. */
export function rigText(rig: GeneratedRig, uses: readonly string[], claims?: string): string {
  return `${[
    ...uses.map((file) => `use "${file}"`),
    '',
    `rig ${rig.name} like ${rig.like}${said('under', rig.under)} {`,
    ...(rig.group === undefined ? [] : [`  group        ${rig.group}`]),
    `  unit         "${rig.unit}"`,
    `  vin          "${rig.vin}"`,
    `  built        ${rig.built}`,
    `  acquired     ${rig.acquired}`,
    `  kept-until   ${rig.kept}`,
    `  day-rate     ${rig.rate}`,
    ...(claims === undefined ? ['', ...rig.done.flatMap(doneLines)] : [`  records      "${claims}"`]),
    ...(rig.plans.length > 0 ? ['', ...rig.plans.map(planLine)] : []),
    '}',
  ].join('\n')}\n`;
}

export const historyText = (rig: string, done: readonly Done[]): string =>
  `${[`history ${rig} {`, ...done.flatMap(doneLines), '}'].join('\n')}\n`;
