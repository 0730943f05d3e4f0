// Links: the files behind `use`, photos, papers and bookings.
import type { DocumentLinkProvider } from 'langium/lsp';
import type { DocumentLink } from 'vscode-languageserver';
import { folderOf, resolvePath } from '../../language/resolve/paths.ts';
import { allStatements, partsOf } from '../cursor/standing.ts';
import { rangeOf, uriOf } from '../places.ts';
import { type Features, hereIn } from './here.ts';

export const links = (features: Features): DocumentLinkProvider => ({
  getDocumentLinks(document) {
    const here = hereIn(features, document);
    const out: DocumentLink[] = [];
    for (const statement of allStatements(here.lines.lines)) {
      let clause = statement.row?.word === 'use' ? 'use' : '';
      for (const part of partsOf(statement)) {
        if (part.kind === 'clause') clause = part.text;
        const isLink = linked.has(clause) || (clause === 'from' && statement.row?.word === 'bookings');
        if (part.kind !== 'text' || !isLink || part.text.includes('\\')) continue;
        const path = resolvePath(folderOf(here.path), part.text);
        if (!features.session.files.exists(path)) continue;
        const [from, to] = part.at;
        out.push({ range: rangeOf(here.document, [from + 1, to - 1]), target: uriOf(path) });
      }
    }
    return out;
  },
});

/** The words whose texts are paths of single files. */
const linked = new Set(['use', 'photo', 'paper']);
