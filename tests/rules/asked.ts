// Asks one rule about small texts, and applies quick fixes.
import { checkFile } from '../../language/rules/check.ts';
import type { Finding } from '../../language/rules/finding.ts';
import { projectOf, today } from '../project/workspace.ts';

export interface Asked {
  /** The file that is checked; the first one if it is left out. */
  readonly path?: string;
  readonly asOf?: string;
  readonly exists?: (path: string) => boolean;
}

type Texts = Readonly<Record<string, string>> | string;

/** Everything that is found in one file of a workspace. */
export function found(texts: Texts, { path, asOf = today, exists }: Asked = {}): Finding[] {
  const all = typeof texts === 'string' ? { 'a.rig': texts } : texts;
  const file = path ?? (Object.keys(all)[0] as string);
  return checkFile(projectOf(all), file, { asOf, today: asOf > today ? asOf : today }, exists);
}

/** What one rule says of one file. */
export function said(rule: string, texts: Texts, asked: Asked = {}): Finding[] {
  return found(texts, asked).filter((finding) => finding.rule === rule);
}

/** The text under a finding. */
export const under = (text: string, { at }: Pick<Finding, 'at'>): string => text.slice(at[0], at[1]);

/** A text after the first quick fix of a finding. Throws if there is none. */
export function mended(text: string, { rule, fixes }: Finding): string {
  const [fix] = fixes ?? [];
  if (!fix) throw new Error(`${rule} offers no quick fix`);
  return text.slice(0, fix.at[0]) + fix.text + text.slice(fix.at[1]);
}

/** A rig with these lines on a roof of 28 ft by 8 ft. */
export const rigWith = (...lines: readonly string[]): string =>
  `rig Heron {\n  roof 28 ft by 8 ft epdm\n${lines.map((line) => `  ${line}\n`).join('')}}\n`;
