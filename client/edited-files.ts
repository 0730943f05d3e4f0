import { window } from 'vscode';
import type { Answer } from '../language/documents/delivery.ts';

/** The first is what the return key takes: it loses nothing. */
const choices: ReadonlyMap<string, Answer> = new Map([
  ['Write Beside', 'beside'],
  ['Keep Mine', 'keep'],
  ['Overwrite', 'overwrite'],
]);
const decideEach = 'Decide Each';

/**
 * Asks what to do with files that a person edited since we wrote them: all at once, or one by one when wished.
 * Returns the answer of each, or undefined when the dialog is closed: then nothing is written.
 */
export async function askAboutEdited(edited: readonly string[]): Promise<ReadonlyMap<string, Answer> | undefined> {
  const [first] = edited;
  if (edited.length === 1 && first !== undefined) return askEach([first]);
  const picked = await window.showWarningMessage(
    `${edited.length} files were edited since they were written.`,
    { modal: true, detail: `${list(edited)}\n\n${explanation}` },
    ...choices.keys(),
    decideEach,
  );
  if (picked === decideEach) return askEach(edited);
  const answer = choices.get(picked ?? '');
  return answer && new Map(edited.map((name) => [name, answer]));
}

const explanation =
  '"Keep Mine" leaves the file as it is. "Write Beside" leaves it too, and writes the new one next to it, with ".new" in its name.';

async function askEach(edited: readonly string[]): Promise<ReadonlyMap<string, Answer> | undefined> {
  const answers = new Map<string, Answer>();
  for (const name of edited) {
    const picked = await window.showWarningMessage(
      `${name} was edited since it was written.`,
      { modal: true, detail: explanation },
      ...choices.keys(),
    );
    const answer = choices.get(picked ?? '');
    if (!answer) return undefined;
    answers.set(name, answer);
  }
  return answers;
}

/** Names for a dialog, which does not scroll. */
function list(names: readonly string[]): string {
  const shown = names.slice(0, 10).join('\n');
  return names.length > 10 ? `${shown}\nand ${names.length - 10} more` : shown;
}
