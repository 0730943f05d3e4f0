// Rules of the ground: what a material is laid on must take it.
import type { Located } from '../resolve/located.ts';
import type { Primer } from '../resolve/types.ts';
import { groundOf } from '../seams/index.ts';
import { harmsOf, objectionsTo, primerNeeded, primersOf } from './bond.ts';
import { firstDo, type Job, jobsOf, laidBy, said } from './jobs.ts';
import { family, type RigContext } from './rule.ts';

const rules = {
  'silicone-underneath': {
    severity: 'error',
    title: 'Something over silicone',
    why: 'Nothing but silicone holds on silicone or on the film that it leaves. Strip it, abrade or digest the film, and test with a piece of tape.',
    fix: 'Adds a plan to strip what lies there first; whether the film is gone only a test can tell.',
    source: 'common practice',
  },
  'does-not-bond': {
    severity: 'error',
    title: 'A material on a surface that it must not be used on',
    why: 'It will let go, or it harms the surface.',
    fix: 'Adds a plan to strip what lies there first; on the surface itself another material is a decision.',
    source: "the material's `never-on`, else the built-in library, each with its kind",
  },
  'only-by-label': {
    severity: 'warning',
    title: 'A material on a surface for which only its label can say yes',
    why: "If your product's label names this surface, add it to the material's `bonds-to`, with the preparation that it asks for.",
    fix: 'None: only the label can tell; if it says yes, the surface goes to `bonds-to` of the material.',
    source: 'the built-in library, each figure with its kind',
  },
  'test-patch-first': {
    severity: 'information',
    title: 'A material on a surface where a test patch comes first',
    why: 'It may or may not hold here. Lay a piece, wait, peel.',
    fix: 'Adds a plan to strip what lies there first; on the surface itself only a test can tell.',
    source: 'the built-in library, each figure with its kind',
  },
  'bond-unknown': {
    severity: 'information',
    title: 'Nothing is known of a material on this surface',
    why: 'Neither the material nor the built-in library says whether it holds here.',
    fix: 'None: look at the label, and add the surface to `bonds-to` or `never-on`.',
  },
  'thermoplastic-tape': {
    severity: 'warning',
    title: 'Butyl tape on a thermoplastic membrane',
    why: 'It is a temporary patch that will let go in the end. The lasting repair of such a sheet is a weld.',
    fix: 'None: the membrane stays what it is, and whether a patch will do until a weld is a decision.',
    source: 'published: TI 809-53 (US Army, 1999) p. 7-7',
  },
  'solvent-harms-surface': {
    severity: 'error',
    title: 'A cleaner that harms the surface',
    why: 'Ketones and aromatics craze and dissolve plastics; oils and spirits swell rubber.',
    fix: 'None: which cleaner is at hand is for you to say.',
    source: "the cleaner's own lines, else the built-in library, each with its kind",
  },
  'missing-primer': {
    severity: 'warning',
    title: 'A primer that the surface needs is missing',
    why: 'A primer that you declare says that this surface needs it before tape or sealant.',
    fix: 'Names the primer before the material.',
    source: "the primer's `needed-on`; published practice for building membranes is to clean and prime (UFGS 07530)",
  },
} as const;

type Found = Located & { readonly rule: keyof typeof rules };

export const ground = family(rules, function* (context) {
  const primers = primersOf(context.names, context.view);
  for (const job of jobsOf(context)) {
    if (job.seam.role === 'open') continue;
    const seen = new Set<string>();
    for (const found of [...bonds(job, context), ...solvents(job, context), ...primer(job, context, primers)]) {
      const key = `${found.rule} ${found.message}`;
      if (seen.has(key)) continue;
      seen.add(key);
      yield found;
    }
  }
});

/** What comes off with what lies there; of the others the label decides. */
const comesOff = new Set<string>(['silicone-underneath', 'does-not-bond', 'test-patch-first']);

const about = (job: Job) => ({ file: job.file, at: job.place.at, item: job.place.item });
function* bonds(job: Job, { view }: RigContext): Iterable<Found> {
  for (const { used, material } of laidBy(job)) {
    for (const stretch of job.stretches) {
      const { surfaces, layer } = groundOf(stretch, job.seam.item, view.rig.roof);
      for (const surface of surfaces) {
        const grade = material.bonding[surface];
        const below = layer?.event
          ? [{ file: layer.event.file, at: layer.event.record.at, message: `${surface} lies there since.` }]
          : [];
        const where =
          grade && !grade.origin.file.startsWith('library/')
            ? [{ file: grade.origin.file, at: grade.origin.at, message: `${material.name} says so.` }]
            : [];
        const here = { ...about(job), related: [...below, ...where] };
        // What lies there can come off; the roof itself cannot.
        const strip = layer ? { fixes: firstDo('strip', job, true) } : {};
        for (const { rule, text } of objectionsTo(material, surface, view))
          yield {
            ...here,
            rule,
            message: `\`${used.name}\` on ${surface} (\`${job.place.item}\`): ${text}`,
            ...(comesOff.has(rule) ? strip : {}),
          };
      }
    }
  }
}

/** Cleaners named with the work, on the surfaces of the seam itself. */
function* solvents(job: Job, { view }: RigContext): Iterable<Found> {
  for (const { used, material } of job.materials) {
    if (material?.kind !== 'cleaner') continue;
    const { item } = job.seam;
    const surfaces = item.between ?? [view.rig.roof?.surface, item.surface].filter((s) => s !== undefined);
    for (const surface of surfaces) {
      for (const { rule, text } of harmsOf(material, surface))
        yield {
          ...about(job),
          at: used.at,
          rule,
          message: `\`${used.name}\` harms ${surface} (\`${job.place.item}\`): ${text}`,
        };
    }
  }
}

function* primer(job: Job, { view }: RigContext, primers: readonly Primer[]): Iterable<Found> {
  if (
    (job.verb !== 'tape' && job.verb !== 'seal') ||
    primers.length === 0 ||
    job.materials.some(({ material }) => material?.kind === 'primer')
  )
    return;
  const [laid] = laidBy(job);
  if (!laid) return;
  for (const stretch of job.stretches) {
    const missing = primerNeeded(groundOf(stretch, job.seam.item, view.rig.roof), primers);
    if (!missing) continue;
    const { surface, primer: needed } = missing;
    yield {
      ...about(job),
      rule: 'missing-primer',
      message: `\`${job.place.item}\` is ${said(job)} on ${surface}, which needs \`${needed.name}\` first.`,
      related: [{ file: needed.origin.file, at: needed.origin.at, message: `${needed.name} says so.` }],
      fixes: [
        {
          label: `Name \`${needed.name}\` before \`${laid.used.name}\``,
          at: [laid.used.at[0], laid.used.at[0]],
          text: `${needed.name}, `,
        },
      ],
    };
    return;
  }
}
