// What to say of a line whose first word opens no statement in its block.
import type { Line } from '../grammar/lines.ts';
import type { Fix, Problem } from '../grammar/problem.ts';
import { write } from '../statements/cursor.ts';
import { fileTable } from '../statements/file.ts';
import type { BlockTable } from '../statements/row.ts';
import { allTables } from '../statements/vocabulary.ts';
import { nearest } from '../values/nearest.ts';

/** Reports a line with an unknown first word; `meant` is the word that its block has shown to be meant. */
export function unknownStatement(line: Line, table: BlockTable, meant: string | undefined, problems: Problem[]): void {
  const { head, headAt: at } = line;
  if (head === '') return; // a block without a heading; the layout pass has said so
  if (/^(<{7}|={7}|>{7}|\|{7})/.test(head)) {
    const message = 'Two versions of this file were not merged: keep the lines that are true and remove the marks.';
    problems.push({ rule: 'merge-conflict', message, at });
    return;
  }
  const close = meant ?? nearest(head, table.rows.keys()) ?? begunBy(head, table);
  if (close !== undefined) {
    const message = `\`${head}\` is no statement here; did you mean \`${close}\`?`;
    problems.push({ rule: 'unknown-statement', message, at, fixes: [write(close, at)] });
    return;
  }
  const where = placeOf(table);
  const elsewhere = allTables().find((other) => other.rows.has(head));
  const message = !elsewhere
    ? `\`${head}\` is no statement ${where}. ${firstWords(table)} A remark begins with \`#\`.`
    : elsewhere === fileTable
      ? `\`${head}\` stands at the top of a file, not ${where}; is a \`}\` missing before it?`
      : `\`${head}\` stands ${placeOf(elsewhere)}, not ${where}.`;
  const remark: Fix = { label: 'Make this line a remark', at: [at[0], at[0]], text: '# ', unsure: true };
  problems.push({ rule: 'unknown-statement', message, at, ...(elsewhere || line.block ? {} : { fixes: [remark] }) });
}

/** The statement whose first letters were typed, where they are those of one only. */
function begunBy(head: string, table: BlockTable): string | undefined {
  if (head.length < 2) return undefined;
  const begun = [...table.rows.keys()].filter((word) => word.startsWith(head));
  return begun.length === 1 ? begun[0] : undefined;
}

const placeOf = (table: BlockTable) => (table === fileTable ? 'at the top of a file' : `in a ${table.name}`);

function firstWords(table: BlockTable): string {
  if (table.names) return 'A line here begins with the name of a seam or an item, such as `bath-vent sound`.';
  const words = [...table.rows.keys()].slice(0, 6).map((word) => `\`${word}\``);
  return `A line here begins with a word such as ${words.join(', ')}.`;
}
