import { Range, Uri, type ViewColumn, window } from 'vscode';
import { goToArgumentSchema } from '../language/protocol/index.ts';

/** Shows the place that words of a lens or an entry of a calendar lead to. */
export async function goTo(argument: unknown, viewColumn?: ViewColumn): Promise<void> {
  const asked = goToArgumentSchema.safeParse(argument);
  if (!asked.success) return;
  const { uri, range } = asked.data;
  const { start, end } = range;
  await window.showTextDocument(Uri.parse(uri), {
    ...(viewColumn === undefined ? {} : { viewColumn }),
    selection: new Range(start.line, start.character, end.line, end.character),
  });
}
