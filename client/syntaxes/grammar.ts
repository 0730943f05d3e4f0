/** The words of the language by the part that they play in a line, as the statement table gives them. */
export interface Words {
  readonly declarations: readonly string[];
  readonly statements: readonly string[];
  readonly verbs: readonly string[];
  readonly clauses: readonly string[];
  readonly units: readonly string[];
  readonly conditions: readonly string[];
  readonly sides: readonly string[];
  readonly surfaces: readonly string[];
  readonly sets: readonly string[];
}

const name = '[\\p{L}_][\\p{L}\\p{M}\\p{N}_-]*';
const noWordBefore = '(?<![\\p{L}\\p{M}\\p{N}_-])';
const noWordAfter = '(?![\\p{L}\\p{M}\\p{N}_-])';
const number = '-?(?:\\d+[ \\t]+)?\\d+/\\d+|-?\\d+(?:\\.\\d+)?';

/** A pattern for any of the words; the longest come first, since the first that fits is taken. */
function anyOf(words: Iterable<string>): string {
  const sorted = [...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  return `(?:${sorted.map((word) => word.replace(/[^\p{L}\p{N}_-]/gu, '\\$&')).join('|')})${noWordAfter}`;
}

/** The words wherever they stand whole: `bath` is not found in `bath-vent`. */
const anywhere = (words: Iterable<string>, scope: string) => ({ name: scope, match: noWordBefore + anyOf(words) });

/**
 * The TextMate grammar: the first colours of a file, before the server's exact ones. It knows lines and words, not
 * meaning: `tape` at the start of a line is a statement, after a comma it is a surface, and a name like a word is lost.
 */
export function textMateGrammar(words: Words): object {
  const verbs = new Set(words.verbs);
  const others = words.statements.filter((word) => !verbs.has(word));
  const unit = `${anyOf(words.units)}|[A-Z]{3}${noWordAfter}|%`;
  /** Statement words where `before` says that a statement begins. */
  const beginning = (before: string) => [
    { match: `${before}(${anyOf(verbs)})`, captures: { 1: { name: 'keyword.control.verb.rig' } } },
    { match: `${before}(${anyOf(others)})`, captures: { 1: { name: 'keyword.other.statement.rig' } } },
  ];
  return {
    name: 'Rig',
    scopeName: 'source.rig',
    patterns: ['comment', 'declaration', 'statement', 'oneLineBlock', 'value'].map((rule) => ({ include: `#${rule}` })),
    repository: {
      comment: {
        patterns: [
          { name: 'comment.line.documentation.rig', match: '##.*$' },
          { name: 'comment.line.number-sign.rig', match: '#.*$' },
        ],
      },
      // At the left margin: a statement word and the name that it declares.
      declaration: {
        match: `^(${anyOf(words.declarations)})(?:[ \\t]+(${name}))?`,
        captures: { 1: { name: 'storage.type.rig' }, 2: { name: 'entity.name.type.rig' } },
      },
      statement: { patterns: beginning('^[ \\t]+') },
      // In a block on one line the formatter sets statements two spaces apart.
      oneLineBlock: {
        begin: '\\{(?=(?:[^{}"#]|"(?:[^"\\\\]|\\\\.)*")*\\})',
        end: '\\}|$',
        beginCaptures: { 0: { name: 'punctuation.section.block.begin.rig' } },
        endCaptures: { 0: { name: 'punctuation.section.block.end.rig' } },
        patterns: [...beginning('(?<=\\{|\\{[ \\t]|[ \\t][ \\t])'), { include: '#value' }],
      },
      value: {
        patterns: [
          { include: '#comment' },
          { include: '#text' },
          {
            name: 'constant.numeric.date.rig',
            match: `${noWordBefore}\\d{4}-\\d{2}(?:-\\d{2}(?:[ \\t]+\\d{1,2}:\\d{2})?)?${noWordAfter}`,
          },
          { name: 'constant.numeric.date.rig', match: `${noWordBefore}\\d{2}-\\d{2}${noWordAfter}` },
          {
            match: `${noWordBefore}(${number})(?:[ \\t]*(${unit}))?`,
            captures: { 1: { name: 'constant.numeric.rig' }, 2: { name: 'keyword.other.unit.rig' } },
          },
          {
            match: `${noWordBefore}(per)[ \\t]+(${unit})`,
            captures: { 1: { name: 'keyword.operator.expression.rig' }, 2: { name: 'keyword.other.unit.rig' } },
          },
          anywhere(words.clauses, 'keyword.operator.expression.rig'),
          anywhere(words.conditions, 'constant.language.condition.rig'),
          anywhere(words.sides, 'variable.language.side.rig'),
          anywhere(words.sets, 'variable.language.set.rig'),
          anywhere(words.surfaces, 'support.constant.surface.rig'),
          { name: 'punctuation.separator.comma.rig', match: ',' },
          { name: 'punctuation.section.block.begin.rig', match: '\\{' },
          { name: 'punctuation.section.block.end.rig', match: '\\}' },
        ],
      },
      // A text ends with its line, closed or not.
      text: {
        name: 'string.quoted.double.rig',
        begin: '"',
        end: '"|$',
        patterns: [{ name: 'constant.character.escape.rig', match: '\\\\["\\\\]' }],
      },
    },
  };
}

/** The text of the grammar file. */
export function printGrammar(words: Words): string {
  return `${JSON.stringify(textMateGrammar(words), undefined, 2)}\n`;
}
