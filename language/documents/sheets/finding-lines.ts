// The lines of an inspection, ready to be typed: what was not sound last time has a line of its own.
import type { Rig } from '../../resolve/types.ts';
import type { SeamState } from '../../seams/index.ts';
import { dateGap, gap } from './afterwards.ts';
import { shown } from './shown.ts';
import { temperatureUnit } from './units.ts';
import { walkingOrder } from './walking.ts';

/** The word of the last finding stands behind each line as a comment. */
export function findingLines(rig: Rig, there: (name: string) => SeamState | undefined): readonly string[] {
  const lines = walkingOrder(rig).flatMap(({ items }) =>
    items.flatMap((item) => {
      const seam = there(item.name);
      const last = seam && notSound(seam);
      return last === undefined
        ? []
        : [`  ${item.name} ${gap} moisture ${gap} % photo "${gap}" note "${gap}"  # last: ${last}`];
    }),
  );
  const unit = temperatureUnit(rig.policy.units.value);
  return [
    `inspected ${dateGap} by "${gap}" air ${gap} ${unit} {`,
    ...lines,
    `  ${gap} ${gap} moisture ${gap} % photo "${gap}" note "${gap}"  # one for each other seam that is not sound`,
    `  ${gap} not-seen note "${gap}"`,
    '  rest sound',
    '}',
    `leaked ${dateGap} inside "${gap}" suspect ${gap} moisture ${gap} %`,
  ].map((line) => line.replace(/\S.*$/u, (text) => shown(text)));
}

function notSound({ stretches }: SeamState): string | undefined {
  const words = stretches.flatMap(({ condition, notSeen, wet }) => [
    ...(notSeen ? ['not-seen'] : []),
    ...(wet ? ['wet'] : []),
    ...(condition && condition.word !== 'sound' ? [condition.word] : []),
  ]);
  return words.length === 0 ? undefined : [...new Set(words)].join(', ');
}
