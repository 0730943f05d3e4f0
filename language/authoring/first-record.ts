// The first record of a rig, written from the answers to a few questions: what was said, and in remarks what to measure next.
import type { System } from '../values/display.ts';
import { column, nextColumn } from './columns.ts';
import { type PartName, type RigKind, type UsualPart, usualKinds, usualParts } from './usual.ts';

/** What was answered. Lengths and dates are as they were typed, names as they were chosen. */
export interface FirstRecord {
  readonly kind: RigKind;
  readonly units: System;
  readonly name: string;
  readonly length: string;
  readonly width: string;
  /** A surface; absent where nobody knows yet. */
  readonly membrane?: string | undefined;
  /** A part as often as it is there. */
  readonly parts: readonly PartName[];
  readonly slides: readonly FirstSlide[];
  /** The day from which a used rig is known; absent for a new one. */
  readonly found?: string | undefined;
  /** The policy that it is kept under, and the path of its file; absent: the built-in one. */
  readonly policy?: { readonly name: string; readonly path: string } | undefined;
}

export interface FirstSlide {
  /** Along the side. */
  readonly length: string;
  /** Out from the side. */
  readonly depth: string;
  readonly side: 'curbside' | 'roadside';
}

/** The text of a `.rig` file that checks clean of errors, as long as the answers were read before. */
export function firstRecord(record: FirstRecord): string {
  const { kind, name, policy, found, units } = record;
  const usual = usualKinds[kind];
  // Without a policy figures are printed in the built-in units: metric answers bring one of their own.
  const own = policy === undefined && units === 'metric' ? `${name}-units` : undefined;
  const under = policy?.name ?? own;
  const blocks = [
    roofLines(record),
    partLines(record),
    found === undefined
      ? [...remark('What happens is written below with its date, in the past tense: `sealed`, `inspected`, `leaked`.')]
      : [
          ...remark('Used: nobody knows what is on the seams, so they count as sealed with something unknown.'),
          line('found', `${found} all with unknown`),
        ],
    nextSteps(record),
  ];
  return [
    `# A first record, from what was asked. Sizes of parts are usual ones: measure yours, and write what is true.`,
    ...(policy ? [`use "${policy.path}"`] : []),
    '',
    ...(own ? [`policy ${own} { units metric }`, ''] : []),
    `## ${usual.title}.`,
    `rig ${name}${under === undefined ? '' : ` under ${under}`} {`,
    ...blocks.flatMap((lines, i) => (i === 0 ? lines : ['', ...lines])),
    '}',
    '',
  ].join('\n');
}

const line = (word: string, rest: string) => `  ${word.padEnd(column)}${rest}`.trimEnd();
const remark = (...lines: readonly string[]) => lines.map((text) => `  # ${text}`);

function roofLines({ kind, length, width, membrane, slides }: FirstRecord): readonly string[] {
  const { hasEdges } = usualKinds[kind];
  const size = `${length} by ${width}`;
  return [
    ...remark(
      'The roof: along by across, and its membrane. Places are measured from the front, and from the curb side.',
    ),
    line('roof', membrane === undefined ? size : `${size}  ${membrane}`),
    ...(hasEdges ? [line('edge', 'curbside, roadside'), line('cap', 'front'), line('cap', 'rear')] : []),
    ...slideLines(slides),
    line('field', 'membrane'),
  ];
}

function slideLines(slides: readonly FirstSlide[]): readonly string[] {
  const sizes = slides.map(({ length, depth }) => `${length} by ${depth}`);
  const wide = nextColumn(sizes);
  return slides.map(({ side }, i) => {
    const name = slides.length === 1 ? 'slide-out' : `slide-${i + 1}`;
    return line('slide', `${name.padEnd(column)}${sizes[i]?.padEnd(wide)}on ${side}`);
  });
}

/** Parts of one kind stand together in the order of the table; several are numbered. */
function partLines({ parts, units }: FirstRecord): readonly string[] {
  const named = (Object.keys(usualParts) as PartName[]).flatMap((part) => {
    const count = parts.filter((one) => one === part).length;
    return Array.from({ length: count }, (_, i) => ({
      part: usualParts[part] as UsualPart,
      name: count === 1 ? part : `${part}-${i + 1}`,
    }));
  });
  if (named.length === 0)
    return remark(
      'What goes through the roof or stands on it, such as:',
      `  ${'opening'.padEnd(column)}vent  ${usualParts.vent.size[units]}  of abs`,
    );
  const wide = nextColumn(named.map(({ name }) => name));
  const sizeWide = nextColumn(named.map(({ part: { size } }) => size?.[units] ?? ''));
  return [
    ...remark(
      'Sizes are those of the flange, along by across: that is where the bead runs. `of` says what the part is of.',
    ),
    ...named.map(({ part: { word, size, of }, name }) =>
      line(word, [name.padEnd(wide), (size?.[units] ?? '').padEnd(sizeWide), of ? `of ${of}` : ''].join('')),
    ),
  ];
}

function nextSteps({ kind, membrane, parts, slides, units, found, policy }: FirstRecord): readonly string[] {
  const { hasEdges } = usualKinds[kind];
  const [along, across] = units === 'us' ? ['9 ft', '3 ft'] : ['2.8 m', '90 cm'];
  return remark(
    'What to measure and write next, from the ground, from a ladder that somebody holds, or from photos:',
    ...[
      membrane === undefined && 'what the roof is covered with: its name goes behind the size, such as `epdm` or `tpo`',
      parts.length > 0 && `where the middle of each part is: \`at ${along}, ${across}\` behind its size`,
      slides.length > 0 && `where each slide-out is: \`at ${along}\` behind its side, to its middle`,
      hasEdges && 'how wide the old bead is on edges and caps: `wide` and a length',
      hasEdges
        ? 'which surfaces meet in a seam: `between epdm and aluminium`'
        : 'every other seam, such as a rail or a raised roof: `joint`, a name and its length',
      'seams on the walls that can let water in: `joint`, a name, a length, `on wall` and the side',
      'where water runs to: `falls to edges`, or to `front` or `rear`',
      found === undefined && 'what it was sealed with when it was built: `factory` and a sealant',
      found !== undefined && '`built`, `in-service` and `acquired` with their dates: the age of the membrane follows',
      policy === undefined && 'your own way of working in a `policy`: without one the built-in `Standard` holds',
    ]
      .filter((step) => step !== false)
      .map((step) => `- ${step}`),
    'Then run "Rigseam: Record Inspection" and go round it once.',
  );
}
