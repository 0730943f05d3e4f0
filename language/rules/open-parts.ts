// Rules of parts that are never sealed or taped.
import type { Located } from '../resolve/located.ts';
import { addPeriod as endOfLife } from '../values/calendar.ts';
import { jobsOf, said, takeBack } from './jobs.ts';
import { family } from './rule.ts';

const rules = {
  'sealed-a-gasket': {
    severity: 'error',
    title: 'A part on a gasket is sealed or taped',
    why: 'The gasket is pressed by bolts and drains by itself. Sealant around it holds water in and makes the next service a fight. Check and tighten its bolts instead.',
    fix: 'Removes a plan that names nothing else. Whether what is recorded comes off again is for a person to say.',
    source: 'common practice',
  },
  'blocks-drain': {
    severity: 'error',
    title: 'A drain, channel or insert is sealed or taped',
    why: 'Water that cannot leave finds another way in. Spouts, weep holes and awning channels stay open; a vinyl insert holds water when it is covered.',
    fix: 'Removes a plan that names nothing else. Whether what is recorded comes off again is for a person to say.',
    source: 'common practice',
  },
  'tape-over-serviced-part': {
    severity: 'warning',
    title: 'Tape on a part whose lid is opened for service',
    why: 'A lid, cap or hinged vent is opened again; tape around it has to be cut. Seal its flange instead.',
    fix: 'Removes a plan that names nothing else; which sealant goes on instead is a decision.',
    source: 'common practice',
  },
  'tape-over-part-due': {
    severity: 'warning',
    title: 'Tape on a part that is due for replacement within two years',
    why: 'The part goes before the tape does. Replace it first, or seal it.',
    fix: 'None: to replace the part before, to tape it all the same or to seal it is a decision about money.',
    source: 'common practice',
  },
} as const;

export const openParts = family(rules, function* (context): Iterable<Located & { rule: keyof typeof rules }> {
  for (const job of jobsOf(context)) {
    if (job.verb !== 'seal' && job.verb !== 'tape') continue;
    const { item } = job.seam;
    const here = { file: job.file, at: job.place.at, item: item.name };
    if (item.kind === 'gasket')
      yield {
        ...here,
        rule: 'sealed-a-gasket',
        message: `\`${item.name}\` sits on a gasket and is ${said(job)}: it is never sealed or taped. Check its bolts instead.`,
        fixes: takeBack(job),
      };
    else if (item.kind === 'drain' || item.kind === 'channel' || item.kind === 'insert') {
      yield {
        ...here,
        rule: 'blocks-drain',
        message: `\`${item.name}\` is ${item.kind === 'insert' ? 'an insert' : `a ${item.kind}`} and is ${said(job)}: ${item.kind === 'insert' ? 'covered, it holds water' : 'it has to stay open'}.`,
        fixes: takeBack(job),
      };
    } else if (job.verb === 'tape' && item.serviced) {
      yield {
        ...here,
        rule: 'tape-over-serviced-part',
        message: `The lid of \`${item.name}\` is opened for service: tape around it will have to be cut. Seal its flange instead.`,
        fixes: takeBack(job),
      };
    } else if (job.verb === 'tape' && item.partLife) {
      const fitted = job.seam.replaced?.first ?? item.since?.first ?? context.view.rig.identity.built?.value.first;
      const end = fitted && endOfLife(fitted, item.partLife.value.low);
      if (end !== undefined && end <= endOfLife(job.day, { months: 24, days: 0 })) {
        yield {
          ...here,
          rule: 'tape-over-part-due',
          message: `\`${item.name}\` was fitted in ${fitted?.slice(0, 7)} and lasts ${item.partLife.value.low.text} to ${item.partLife.value.high.text}: it is due within two years, before the tape is worn.`,
        };
      }
    }
  }
});
