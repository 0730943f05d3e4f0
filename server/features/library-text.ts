// The text of the built-in library, for editors that can show it.
import type { TextDocumentContentProvider } from 'langium/lsp';
import { libraryScheme, pathOf } from '../places.ts';
import type { Features } from './here.ts';

export const libraryTexts = ({ session }: Features): TextDocumentContentProvider => ({
  schemes: [libraryScheme],
  async provideTextDocumentContent({ uri }) {
    const text = session.project.text(pathOf(uri));
    return text === undefined ? undefined : { text };
  },
});
