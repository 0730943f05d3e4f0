// Rules of readiness: what tape or sealant is laid over must be cured, attached and dry.
import type { Located } from '../resolve/located.ts';
import { coverAllowed } from '../seams/index.ts';
import { firstDo, type Job, jobsOf } from './jobs.ts';
import { family, type RigContext } from './rule.ts';
import { waitUntil } from './waiting.ts';

const rules = {
  'tape-too-early': {
    severity: 'error',
    title: 'Tape over sealant that is not ready to be covered',
    why: "Solvent that tape shuts in blisters and softens its butyl; a sealant that cures from moisture never cures under tape. Before the low figure of the sealant's `cover` clock no tape goes over it.",
    fix: 'Moves a planned tape to the day on which the clock is silent, or strips first what takes no tape at all. A record of what was done stays as it is: look at the tape again.',
    source: 'common practice; the figures are those of the label, else from memory',
  },
  'tape-before-full-cure': {
    severity: 'warning',
    title: 'Tape over sealant between the two figures of its clock',
    why: 'The low figure is past, the high one is not: in cool or still weather the sealant may not be ready. Wait, or look at the tape again soon.',
    fix: 'Moves a planned tape to the day on which the clock is silent.',
    source: 'common practice; the figures are those of the label, else from memory',
  },
  'cover-unknown': {
    severity: 'information',
    title: 'Nobody knows whether what lies under the tape may be covered',
    why: 'The sealant below, its age or its figure is not known. An unknown sealant is tested for silicone first, and stripped if in doubt.',
    fix: 'Adds a plan to strip the seam before the tape, for who is in doubt. A record of what was done stays as it is.',
    source: 'common practice',
  },
  'tape-over-lifting': {
    severity: 'error',
    title: 'Tape over a seam that lifts or is open',
    why: 'What lifts goes on lifting and takes the tape with it; water that stands in it is shut in. Strip or cut back to what holds, seal, and tape when it is ready.',
    fix: 'Adds a plan to strip the seam before the tape.',
    source: 'common practice',
  },
  'tape-over-cracked': {
    severity: 'error',
    title: 'Tape over cracked sealant that was not cut back',
    why: 'Cracks more than half through the bead move under the tape. Cut back or strip first.',
    fix: 'Adds a plan to strip the seam before the tape.',
    source: 'common practice',
  },
  'tape-over-hairline': {
    severity: 'information',
    title: 'Tape over hairline cracks',
    why: 'Acceptable under wide tape once it is clean: the cracks are shallow.',
    fix: 'None: wide tape may go over hairline cracks, so that nothing has to be changed.',
    source: 'common practice',
  },
  'seal-over-lifting': {
    severity: 'error',
    title: 'Sealant over sealant that lifts',
    why: 'New sealant holds no better than what it lies on. Strip what lifts first.',
    fix: 'Adds a plan to strip the seam before it is sealed.',
    source:
      'common practice; building specifications ask to remove all old sealant (Orange County NC, section 07 92 00)',
  },
  'over-wet': {
    severity: 'error',
    title: 'Tape or sealant over a wet place',
    why: 'Closed up, the wood stays wet and rots. Dry it out and take a reading of 19 % or less first.',
    fix: 'Adds a plan to dry the place.',
    source: 'published: decay fungi need at least 20 % moisture in wood (Smulski 1996)',
  },
} as const;

export const readiness = family(rules, function* (context) {
  for (const job of jobsOf(context)) {
    if (job.seam.role !== 'sealed') continue;
    yield* wet(job);
    if (job.verb === 'tape') {
      yield* condition(job);
      yield* cure(job, context);
    } else if (job.verb === 'seal') yield* lifting(job);
  }
});

type Found = Located & { readonly rule: keyof typeof rules };

const about = (job: Job) => ({ file: job.file, at: job.place.at, item: job.place.item });
function* wet(job: Job): Iterable<Found> {
  if (job.dried) return;
  for (const stretch of job.stretches) {
    const reading = stretch.readings.at(-1);
    const damp = reading !== undefined && reading.percent > 19;
    if (!stretch.wet && !damp) continue;
    const event = damp ? reading.event : stretch.wet?.last;
    const why = damp
      ? `its last reading was ${reading.text} on ${reading.event.last}`
      : `it was found wet on ${stretch.wet?.last.last}`;
    yield {
      ...about(job),
      rule: 'over-wet',
      message: `\`${job.place.item}\` is ${job.planned ? `to be ${job.verb === 'tape' ? 'taped' : 'sealed'}` : job.verb === 'tape' ? 'taped' : 'sealed'}, but ${why}. Dry it out and take a reading of 19 % or less first.`,
      ...(event ? { related: [{ file: event.file, at: event.record.at, message: 'Seen here.' }] } : {}),
      fixes: firstDo('dry', job),
    };
    return;
  }
}

function* condition(job: Job): Iterable<Found> {
  const worst = {
    open: 'tape-over-lifting',
    lifting: 'tape-over-lifting',
    cracked: 'tape-over-cracked',
    hairline: 'tape-over-hairline',
  } as const;
  for (const word of ['open', 'lifting', 'cracked', 'hairline'] as const) {
    const stretch = job.stretches.find((s) => s.condition?.word === word);
    if (!stretch?.condition) continue;
    const { event } = stretch.condition;
    const mend =
      word === 'hairline'
        ? 'Under wide tape that is acceptable once it is clean.'
        : word === 'cracked'
          ? 'Cut back or strip it first.'
          : 'Strip it to what holds, and seal it first.';
    yield {
      ...about(job),
      rule: worst[word],
      message: `\`${job.place.item}\` was found ${word} on ${event.last}. ${mend}`,
      related: [{ file: event.file, at: event.record.at, message: `Found ${word} here.` }],
      ...(word === 'hairline' ? {} : { fixes: firstDo('strip', job) }),
    };
    return;
  }
}

function* lifting(job: Job): Iterable<Found> {
  for (const word of ['open', 'lifting'] as const) {
    const stretch = job.stretches.find((s) => s.condition?.word === word && s.layers.length > 0);
    if (!stretch?.condition || (word === 'open' && stretch.defects.includes('missing'))) continue;
    const { event } = stretch.condition;
    yield {
      ...about(job),
      rule: 'seal-over-lifting',
      message: `\`${job.place.item}\` was found ${word} on ${event.last}, and new sealant holds no better than what it lies on. Strip what lifts first.`,
      related: [{ file: event.file, at: event.record.at, message: `Found ${word} here.` }],
      fixes: firstDo('strip', job),
    };
    return;
  }
}

function* cure(job: Job, { view }: RigContext): Iterable<Found> {
  const moment = { date: job.day, ...(job.time === undefined ? {} : { time: job.time }) };
  for (const stretch of job.stretches) {
    const answer = coverAllowed(stretch, moment, view.material);
    const { layer, figure } = answer;
    if (answer.level === 'yes') continue;
    const laid = layer?.event;
    const related = laid
      ? [{ file: laid.file, at: laid.record.at, message: `${layer.material ?? 'Sealant'} was laid here.` }]
      : [];
    const { item } = job.place;
    if (answer.level === 'unknown') {
      // What the factory left on a rig of some age has cured whatever it was; only what nobody can name is asked about.
      if (layer?.known !== 'unknown') continue;
      yield {
        ...about(job),
        rule: 'cover-unknown',
        message: `Nobody knows what lies under the tape on \`${item}\`: test it for silicone first, and strip it if in doubt.`,
        related,
        fixes: firstDo('strip', job, true),
      };
      return;
    }
    if (answer.level === 'never') {
      yield {
        ...about(job),
        rule: 'tape-too-early',
        message: `\`${item}\` is sealed with ${layer?.material ?? 'a sealant'}, which takes no tape at any time. Strip it first.`,
        related,
        fixes: firstDo('strip', job),
      };
      return;
    }
    if (!answer.from || figure === undefined || figure.value === 'never') continue;
    const { low, high } = figure.value;
    const [first, safe] = [answer.from.notYet, answer.from.yes];
    const clock = low.text === high.text ? low.text : `${low.text} to ${high.text}`;
    const early = answer.level === 'no';
    yield {
      ...about(job),
      rule: early ? 'tape-too-early' : 'tape-before-full-cure',
      message: early
        ? `\`${item}\` was sealed with ${layer?.material} on ${layer?.last}; tape may go over it after ${clock}: from ${first} at the earliest, without doubt from ${safe}.`
        : `\`${item}\` was sealed with ${layer?.material} on ${layer?.last}; tape over it is without doubt from ${safe} (${clock}).`,
      related,
      ...(job.plan ? { fixes: waitUntil(job.plan, safe) } : {}),
    };
    return;
  }
}
