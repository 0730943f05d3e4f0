// Texts that lie on no disk, for editors that can show them: the built-in library, and a page for each rule.

import { URI } from 'langium';
import type { TextDocumentContentProvider } from 'langium/lsp';
import { ruleScheme } from '../../language/protocol/index.ts';
import { libraryScheme, pathOf } from '../places.ts';
import { rulePage } from '../rule-pages.ts';
import type { Features } from './here.ts';

export const virtualTexts = ({ session }: Features): TextDocumentContentProvider => ({
  schemes: [libraryScheme, ruleScheme],
  async provideTextDocumentContent({ uri }) {
    const parsed = URI.parse(uri);
    const text = parsed.scheme === ruleScheme ? rulePage(parsed) : session.project.text(pathOf(parsed));
    return text === undefined ? undefined : { text };
  },
});
