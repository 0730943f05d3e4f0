// Build step, after `langium generate`: writes the grammar's terminals as a plain table, so that closed files and the
// command line are read with the same lexer without loading the whole of Langium.
import { writeFileSync } from 'node:fs';
import { GrammarAST, GrammarUtils } from 'langium';
import { RigGrammar } from './generated/grammar.ts';

const terminals = RigGrammar()
  .rules.filter(GrammarAST.isTerminalRule)
  .map((rule) => ({ name: rule.name, pattern: GrammarUtils.terminalRegex(rule).source, hidden: rule.hidden }));

writeFileSync(
  new URL('./generated/terminals.ts', import.meta.url),
  `// Generated from rig.langium by generate-terminals.ts. Do not edit.\nexport const terminals = ${JSON.stringify(terminals, undefined, 2)} as const;\n`,
);
