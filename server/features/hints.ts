// Inlay hints: computed figures at the end of the lines they belong to. Sums and places to go to are filled in when the
// editor asks for one hint, if it can do that, else at once.
import { URI } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import type { InlayHint } from 'vscode-languageserver';
import * as z from 'zod';
import type { Span } from '../../language/grammar/problem.ts';
import { pathOf } from '../places.ts';
import { type Features, type Here, hereAt, hereIn } from './here.ts';
import { type Hint, hintsOf } from './hint-kinds.ts';
import { placeToGo } from './refer.ts';

/** Finds a hint again: its document, the start of its line's statement, its text. */
const dataSchema = z.object({ uri: z.string(), at: z.number(), text: z.string() });

export const hints = (features: Features): InlayHintProvider => ({
  getInlayHints(document, { range }) {
    const here = hereIn(features, document);
    const [from, to] = [here.document.offsetAt(range.start), here.document.offsetAt(range.end)];
    return hintsOf(features, here)
      .filter(({ at }) => at[1] >= from && at[1] <= to)
      .map((hint): InlayHint => {
        const bare: InlayHint = {
          position: here.document.positionAt(endOf(here.text, hint.at)),
          label: hint.text,
          paddingLeft: true,
        };
        if (!features.can.resolvesHints) return whole(bare, hint, here);
        return { ...bare, data: { uri: here.document.uri, at: hint.at[0], text: hint.text } };
      });
  },
});

/** The hint with its sum; as it came where the text has moved on since. */
export function resolveHint(features: Features, hint: InlayHint): InlayHint {
  const { success, data } = dataSchema.safeParse(hint.data);
  const here = success ? hereAt(features, pathOf(URI.parse(data.uri))) : undefined;
  if (!success || !here) return hint;
  const found = hintsOf(features, here).find(({ at, text }) => at[0] === data.at && text === data.text);
  return found ? whole(hint, found, here) : hint;
}

function whole(bare: InlayHint, hint: Hint, here: Here): InlayHint {
  const location = placeToGo(hint.from, here.texts);
  return {
    ...bare,
    label: location ? [{ value: hint.text, location }] : hint.text,
    tooltip: { kind: 'markdown', value: hint.tooltip() },
  };
}

/** Behind the line, and behind the brace that it opens. */
function endOf(text: string, [, end]: Span): number {
  return end + (/^[ \t]*\{(?=[ \t]*(#|\r?\n|$))/.exec(text.slice(end, end + 100))?.[0].length ?? 0);
}
