// The Langium tree and the lines of the token reader, in one form, so that they can be compared.
import type { AstNode } from 'langium';
import type { File, Line as Node, Part as PartNode } from '../../language/grammar/generated/ast.ts';
import type { Line, Lines, Part } from '../../language/grammar/lines.ts';
import type { createRigServices, RigLexingReport } from '../../language/grammar/services.ts';

type Rig = ReturnType<typeof createRigServices>['rig'];

/** What the Langium parser makes of a text. `invalid` is what neither lexer nor parser may ever report. */
export function parsed(rig: Rig, text: string) {
  const { value, parserErrors, lexerErrors, lexerReport } = rig.parser.LangiumParser.parse<File>(text);
  return {
    lines: value.lines.map(ofNode),
    problems: (lexerReport as RigLexingReport).problems,
    invalid: [...parserErrors, ...lexerErrors].map((error) => error.message),
  };
}

/** The lines of the token reader in the same form. */
export const read = (text: string, { lines }: Lines) => lines.map((line) => ofLine(text, line));

interface Plain {
  readonly head: string;
  readonly parts: readonly unknown[];
  readonly block: readonly Plain[];
}

const ofNode = (node: Node): Plain => ({
  // A heading that the layout pass made for a block without one has no syntax node, so Langium leaves it out.
  head: node.head ?? '',
  parts: node.parts.map(ofPartNode),
  block: node.lines.map(ofNode),
});

const kinds: Readonly<Record<PartNode['$type'], Part['kind']>> = {
  Word: 'word',
  Clause: 'clause',
  Comma: 'comma',
  Day: 'date',
  Time: 'time',
  MonthDay: 'monthday',
  Text: 'text',
  Quantity: 'quantity',
  Mistake: 'mistake',
};

function ofPartNode(node: PartNode) {
  const said =
    node.$type === 'Quantity'
      ? { terms: node.terms.map(({ amount, unit }) => [amount, unit]), per: node.per }
      : { text: node.text };
  return { kind: kinds[node.$type], at: spanOf(node), ...said };
}

const spanOf = (node: AstNode) => [node.$cstNode?.offset, node.$cstNode?.end];

const ofLine = (text: string, line: Line): Plain => ({
  head: line.head,
  parts: line.parts.map((part) => ofPart(text, part)),
  block: (line.block ?? []).map((inner) => ofLine(text, inner)),
});

function ofPart(text: string, part: Part) {
  const said =
    part.kind === 'quantity'
      ? { terms: part.terms.map(({ amount, unit }) => [amount, unit]), per: part.per }
      : { text: part.kind === 'text' ? text.slice(...part.at) : part.text };
  return { kind: part.kind, at: [...part.at], ...said };
}
