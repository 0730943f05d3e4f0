// The answers about a new rig on their way to a record.
import type { z } from 'zod';
import type { FirstRecord, FirstSlide } from '../../language/authoring/first-record.ts';
import { type PartName, type RigKind, usualKinds } from '../../language/authoring/usual.ts';
import type { newRigAsk } from '../../language/protocol/index.ts';
import type { Reply } from './inputs.ts';

export type Offers = z.infer<typeof newRigAsk.reply>;
export type Policy = Offers['policies'][number];

/** What has been answered so far. */
export interface Draft {
  readonly kind: RigKind;
  readonly name: string;
  /** `null`: none of those that are there. */
  readonly policy?: Policy | null;
  readonly units: 'us' | 'metric';
  readonly length: string;
  readonly width: string;
  readonly membrane?: string | null;
  readonly parts?: readonly PartName[];
  readonly slideCount: number;
  readonly slides: readonly FirstSlide[];
  readonly isUsed: boolean;
  readonly found: string;
  readonly wantsPolicy: boolean;
}

export const emptyDraft: Draft = {
  kind: 'travel-trailer',
  name: '',
  units: 'us',
  length: '',
  width: '',
  slideCount: 0,
  slides: [],
  isUsed: true,
  found: '',
  wantsPolicy: true,
};

/** Reads answers as the language does. */
export interface Reader {
  name(text: string): Promise<string | undefined>;
  length(text: string, atMost?: string): Promise<string | undefined>;
  date(text: string): Promise<string | undefined>;
}

export const title = 'New Rig Record';

/** The answer as a part of the draft; left by either way, the question before comes again. */
export const as = <T>(reply: Reply<T>, more: (answer: T) => Partial<Draft>): Partial<Draft> | undefined =>
  'answer' in reply ? more(reply.answer) : undefined;

/** The answers as a first record; `newPolicy`: the policy that is written beside it. */
export function recordOf(draft: Draft, newPolicy: string | undefined): FirstRecord {
  const { kind, units, name, length, width, membrane, parts, slides, slideCount, isUsed, found, policy } = draft;
  const under = policy ?? (newPolicy === undefined ? undefined : { name: newPolicy, path: 'policy.rig' });
  return {
    kind,
    units,
    name,
    length,
    width,
    membrane: membrane ?? undefined,
    parts: parts ?? usualKinds[kind].parts,
    slides: slides.slice(0, slideCount),
    found: isUsed ? found : undefined,
    policy: under && { name: under.name, path: under.path },
  };
}
