// Names for findings that stay the same while lines move and days pass, so that a list of findings can be compared with a
// later one.
import { createHash } from 'node:crypto';
import type { Finding } from '../../language/rules/finding.ts';

/**
 * A name for each finding, in their order: made of the rule, the rig and item that it is about, and the words of its line.
 * Where the line stands, and its white space, do not count; nor does the message, which may count days. What is alike in all
 * of these in one file is numbered.
 */
export function fingerprints(findings: readonly Finding[], text: (file: string) => string): readonly string[] {
  const seen = new Map<string, number>();
  return findings.map(({ rule, rig, item, file, at }) => {
    const alike = JSON.stringify([rule, rig ?? '', item ?? '', lineAt(text(file), at[0])]);
    const times = seen.get(`${file}\n${alike}`) ?? 0;
    seen.set(`${file}\n${alike}`, times + 1);
    return createHash('sha256').update(`${alike}${times}`).digest('hex').slice(0, 32);
  });
}

function lineAt(text: string, offset: number): string {
  const start = Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  const end = text.slice(offset).search(/[\r\n]/);
  return text
    .slice(start, end < 0 ? undefined : offset + end)
    .replace(/\s+/g, ' ')
    .trim();
}
