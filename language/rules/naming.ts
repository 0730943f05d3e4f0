// Rules of names: what is visible where, what is like what, what a record is about.
import type { Located } from '../resolve/located.ts';
import { unknownInHistories } from '../resolve/references.ts';
import { family, type RuleEntry } from './rule.ts';

const error = { severity: 'error' } as const;

const rules = {
  'wrong-path': {
    ...error,
    title: 'A path is written with backslashes',
    why: 'Paths are written with forward slashes, so that they hold on every machine.',
    fix: 'Writes forward slashes.',
  },
  'use-leaves-workspace': {
    ...error,
    title: 'A path leaves the workspace',
    why: 'Only files below the folder that is checked can be used, so that a result never depends on what lies around it.',
    fix: 'None: the file has to be moved.',
  },
  'use-circle': {
    severity: 'information',
    title: 'Files use each other in a circle',
    why: 'It does no harm: names are looked up when they are needed. One of the `use` lines may be left out.',
    fix: 'None: which of the `use` lines goes decides which file can stand alone.',
  },
  'file-not-found': {
    ...error,
    title: 'A file is not there',
    why: 'The path is seen from the folder of the file that names it.',
    fix: 'None: only the writer knows which file is meant.',
  },
  'used-twice': {
    severity: 'warning',
    title: 'A file is used twice',
    why: 'Once is enough.',
    fix: 'None: either line may go, and a remark beside it may belong to only one of them.',
  },
  'name-twice': {
    ...error,
    title: 'A name is given twice',
    why: 'A name stands for one thing. The first holds.',
    fix: 'None: only the writer knows the other name.',
  },
  'names-differ-in-case': {
    ...error,
    title: 'Two names differ in their case only',
    why: 'Rigs, models and fleets name files, and some machines do not tell such names apart.',
    fix: 'None: only the writer knows the other name.',
  },
  'reserved-name': {
    ...error,
    title: 'A name that some machines refuse for files',
    why: 'Rigs and fleets name the files that are written for them; this name cannot be a file everywhere.',
    fix: 'None: only the writer knows the other name.',
  },
  'unknown-name': {
    ...error,
    title: 'A name is not known',
    why: 'Nothing of that name is visible here: it is misspelt, or its file is not used.',
    fix: 'Writes the nearest name.',
  },
  'unknown-material': {
    ...error,
    title: 'A material is not known',
    why: 'No tape, sealant, primer, cleaner or coating of that name is visible here.',
    fix: 'Writes the nearest name.',
  },
  'unknown-surface': {
    ...error,
    title: 'A surface is not known',
    why: 'No surface of that name is visible here. A new one is declared with `surface NAME { group … }`.',
    fix: 'Writes the nearest name.',
  },
  'unknown-seam': {
    ...error,
    title: 'A seam or an item is not known',
    why: 'The rig has nothing of that name.',
    fix: 'Writes the nearest name.',
  },
  'like-another-kind': {
    ...error,
    title: 'Like something of another kind',
    why: 'A rig is like a model or a rig, everything else like its own kind.',
    fix: 'None: the two kinds have different lines, so that nothing could be taken over.',
  },
  'like-circle': {
    ...error,
    title: 'Things are like each other in a circle',
    why: 'In a circle nothing describes anything. Its members count as having no base.',
    fix: 'None: only the writer knows which comes first.',
  },
  'line-twice': {
    ...error,
    title: 'A line is said twice',
    why: 'One block says each thing once. The first line holds.',
    fix: 'None: only the writer knows which is true.',
  },
  'dropped-and-written': {
    ...error,
    title: 'An item is dropped and written in one block',
    why: 'A line replaces the inherited one by itself; `without` is for items that the rig does not have.',
    fix: 'Takes the name out of `without`.',
  },
  'same-day-order': {
    severity: 'warning',
    title: 'The order of two records of one day is guessed',
    why: 'Two records of one day in different blocks touch the same seam. A time of day settles their order; else a fixed order of verbs is used.',
    fix: 'None: only the writer knows the times.',
  },
} as const satisfies Record<string, RuleEntry>;
type Found = Located & { readonly rule: keyof typeof rules };

/** The names of a file itself are found with the file; those of histories are known only where their rig is. */
export const naming = family(rules, function* ({ view, declaration, names }) {
  if (declaration && names)
    yield* unknownInHistories(view.rig.events, declaration.statements, names) as Iterable<Found>;
});
