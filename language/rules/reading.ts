// Rules of the language itself: what the reader reports while it reads a text.
import { family } from './rule.ts';

const error = { severity: 'error' } as const;

export const reading = family({
  'file-too-large': {
    ...error,
    title: 'A file is too large',
    why: 'A file of several megabytes is no record, or too many records for one file. Split the history into a file a year.',
    fix: 'None: only the writer knows where to split.',
  },
  'empty-file': {
    severity: 'information',
    title: 'A file says nothing yet',
    why: 'It holds no statement: nothing is checked and nothing can be written from it.',
    fix: 'None: only the writer knows what it is to say.',
  },
  'not-text': {
    ...error,
    title: 'A file is not text',
    why: 'The file holds bytes that no text has; it is probably something else with the ending `.rig`.',
    fix: 'None: nothing in it can be read.',
  },
  'merge-conflict': {
    ...error,
    title: 'Marks of a merge are left',
    why: 'Two versions of the file were not merged. Keep the lines that are true and remove the marks.',
    fix: 'None: only the writer knows which version is true.',
  },
  'unclosed-block': {
    ...error,
    title: 'A block is not closed',
    why: 'Every `{` needs its `}`. The end of the block was guessed from the indentation.',
    fix: 'Closes the block where its lines seem to end, which is a guess.',
  },
  'missing-open-brace': {
    ...error,
    title: 'A block has no opening brace',
    why: 'The heading of a block ends with `{`.',
    fix: 'Adds the brace.',
  },
  'stray-brace': {
    ...error,
    title: 'A closing brace closes nothing',
    why: 'There is a `}` too many.',
    fix: 'Removes it.',
  },
  'nested-too-deep': {
    ...error,
    title: 'Blocks are nested too deep',
    why: 'The language has at most three levels of blocks.',
    fix: 'None: the text is damaged, and nobody can tell from it which braces are too many.',
  },
  'missing-heading': {
    ...error,
    title: 'A block has no heading',
    why: 'A `{` opens the block of the statement before it.',
    fix: 'None: only the writer knows the heading.',
  },
  'no-block-here': {
    ...error,
    title: 'A statement opens no block',
    why: 'This statement is a line of its own and has no lines inside.',
    fix: 'None: the lines inside belong elsewhere.',
  },
  'unknown-statement': {
    ...error,
    title: 'A word opens no statement',
    why: 'A line begins with a word that says what it is about. The line is kept as it is and not used.',
    fix: 'Writes the nearest word.',
  },
  'reserved-word': {
    ...error,
    title: 'A word of the language where a name is expected',
    why: 'Words that open a clause are reserved everywhere, so that a line reads one way only.',
    fix: 'None: only the writer knows a better name.',
  },
  'missing-value': {
    ...error,
    title: 'A value is missing',
    why: 'Something is expected at this place; the message gives an example.',
    fix: 'None: only the writer knows the value.',
  },
  'missing-clause': {
    ...error,
    title: 'A clause is missing',
    why: 'The statement means nothing without this clause.',
    fix: 'None: only the writer knows the value.',
  },
  'wrong-type': {
    ...error,
    title: 'A value of another kind is expected',
    why: 'Each place of a statement takes one kind of value, such as a length.',
    fix: 'Puts a text into quotes.',
  },
  'wrong-value': {
    ...error,
    title: 'A value cannot be read',
    why: 'The figure or its unit is not one that the language knows.',
    fix: 'Writes the unit that is meant, where that is certain.',
  },
  'wrong-date': {
    ...error,
    title: 'A date does not exist or is half written',
    why: 'Dates are written as year, month, day: `2026-04-18`.',
    fix: 'Writes the date, where only one can be meant.',
  },
  'wrong-name': {
    ...error,
    title: 'A name is not well formed',
    why: 'A name begins with a letter and goes on with letters, digits, `-` and `_`.',
    fix: 'None: only the writer knows the name.',
  },
  'unknown-word': {
    ...error,
    title: 'A word is not one of the list',
    why: 'At this place one word of a short list is expected.',
    fix: 'Writes the nearest word.',
  },
  'not-understood': {
    ...error,
    title: 'Marks that the language does not use',
    why: 'Inch marks, thousands commas, currency signs, curly quotes and dates with slashes can be misread, so they are not used.',
    fix: 'Writes what is meant.',
  },
  'unclosed-text': {
    ...error,
    title: 'A text is not closed',
    why: 'A text begins and ends with `"` on one line.',
    fix: 'Closes it at the end of the line.',
  },
  'unfinished-list': {
    ...error,
    title: 'A list is not finished',
    why: 'Something is expected after a comma.',
    fix: 'Removes the comma; only the writer knows whether something was to follow.',
  },
  'misplaced-comma': {
    severity: 'warning',
    title: 'A comma has no meaning',
    why: 'Commas stand between the members of a list.',
    fix: 'Removes the comma.',
  },
  misplaced: {
    ...error,
    title: 'Something has no meaning at its place',
    why: 'What stands here belongs to no place and no clause of this statement.',
    fix: 'Writes the nearest clause word, or `note` before a text.',
  },
  'said-twice': {
    severity: 'warning',
    title: 'A clause is said twice',
    why: 'The last one holds.',
    fix: 'None: only the writer knows which is true.',
  },
  'two-statements': {
    ...error,
    title: 'Two statements stand on one line',
    why: 'A statement ends with its line.',
    fix: 'Begins a new line.',
  },
  'too-many-problems': {
    ...error,
    title: 'A file has too many problems',
    why: 'Only the first are shown: mend those, and the rest is read again.',
    fix: 'None: the first ones come first.',
  },
  'two-conditions': {
    ...error,
    title: 'One place has two conditions',
    why: 'The worse of the two is the condition; a stretch of its own can have the other.',
    fix: 'None: only the inspector knows.',
  },
});
