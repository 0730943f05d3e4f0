// The models of a generated workspace: a dozen roofs of two kinds, each in a file of its kind.

export interface Model {
  readonly name: string;
  readonly file: string;
  /** The sealant that its roof gets. */
  readonly sealant: string;
  readonly feet: number;
}

const rubber = ['Alder', 'Birch', 'Cedar', 'Elm', 'Hazel', 'Larch'];
const shell = ['Maple', 'Oak', 'Pine', 'Rowan', 'Spruce', 'Willow'];

export const models: readonly Model[] = [
  ...rubber.map((name, i) => ({ name, file: 'models/rubber.rig', sealant: 'GreyLap', feet: 24 + 2 * i })),
  ...shell.map((name, i) => ({ name, file: 'models/shell.rig', sealant: 'ShellSeal', feet: 23 + 2 * i })),
];

/** The openings and mounts of every model: what is inspected, stripped and sealed anew. */
export const small = ['vent-1', 'vent-2', 'skylight', 'stack-1', 'stack-2', 'ladder-feet'] as const;

function modelText({ name, sealant, feet }: Model): string {
  const surface = sealant === 'GreyLap' ? 'epdm' : 'fibreglass';
  return `model ${name} {
  roof         ${feet} ft by 8 ft 2 in ${surface}
  factory      ${sealant}
  falls        to edges
  edge         curbside, roadside          wide 2 in  between ${surface} and aluminium
  cap          front                       wide 4 in  between ${surface} and fibreglass
  cap          rear                        wide 2 in  between ${surface} and fibreglass
  slide        slide-roof 9 ft by 3 ft     on roadside
  opening      vent-1 16 in by 16 in       at 5 ft, 2 ft            of abs
  opening      vent-2 16 in by 16 in       at 9 ft, 2 ft            of abs
  opening      skylight 32 in by 24 in     at 14 ft, 5 ft           of abs
  opening      stack-1 round 6 in          at 11 ft, 6 ft           of abs
  opening      stack-2 round 6 in          at 17 ft, 6 ft           of abs
  mount        ladder-feet 3 in by 4 in    at ${feet - 2} ft, 1 ft and ${feet - 2} ft, 2 ft 6 in  of aluminium
  field        membrane
  serviced     vent-1, vent-2
}
`;
}

export const modelFiles: Readonly<Record<string, string>> = Object.fromEntries(
  [...new Set(models.map(({ file }) => file))].map((file) => [
    file,
    `use "../shop/materials.rig"\n\n${models
      .filter((model) => model.file === file)
      .map(modelText)
      .join('\n')}`,
  ]),
);
