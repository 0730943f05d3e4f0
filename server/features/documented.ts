// What is read beside an item of completion: at once, or when the editor asks for the one item that is looked at.
import type { CompletionItem } from 'vscode-languageserver';
import * as z from 'zod';
import { catalogue } from '../../language/rules/catalogue.ts';
import { fileTable } from '../../language/statements/file.ts';
import type { BlockTable, Row } from '../../language/statements/row.ts';
import { textsFrom } from '../places.ts';
import { sentence } from './explained.ts';
import type { Features } from './here.ts';
import { materialText } from './material-text.ts';
import { seamBrief } from './seam-text.ts';

/** What an item stands for; `path`: the file in which a name is looked up. */
const aboutSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('statement'), block: z.string(), word: z.string() }),
  z.object({ kind: z.literal('rule'), name: z.string() }),
  z.object({ kind: z.literal('material'), name: z.string(), path: z.string(), why: z.array(z.string()).readonly() }),
  z.object({ kind: z.literal('seam'), name: z.string(), path: z.string(), rig: z.string() }),
]);
export type About = z.infer<typeof aboutSchema>;

type Documented = Pick<CompletionItem, 'documentation' | 'data'>;

/** The documentation itself for an editor that does not ask later, else what is needed to find it. */
export function documentedBy(features: Features, about: About): Documented {
  if (features.can.resolvesDocumentation) return { data: about };
  return documentationOf(features, about);
}

/** An item with its documentation; as it came where what it stands for is gone. */
export function resolveCompletion(features: Features, item: CompletionItem): CompletionItem {
  const { success, data } = aboutSchema.safeParse(item.data);
  return success ? { ...item, ...documentationOf(features, data) } : item;
}

function documentationOf(features: Features, about: About): Documented {
  const value = textOf(features, about);
  return value === undefined ? {} : { documentation: { kind: 'markdown', value } };
}

function textOf({ session, open }: Features, about: About): string | undefined {
  const texts = textsFrom((path) => session.project.text(path), open);
  switch (about.kind) {
    case 'statement': {
      const row = tables.get(about.block)?.rows.get(about.word);
      return row && `${row.help}\n\n\`\`\`rig\n${row.example}\n\`\`\``;
    }
    case 'rule':
      return catalogue.get(about.name)?.title;
    case 'material': {
      const material = session.project.material(about.path, about.name);
      return material && [...about.why.map(sentence), materialText(material, texts)].join('\n\n');
    }
    case 'seam': {
      const rig = session.figures(about.path).rigs.find(({ view }) => view.rig.name === about.rig);
      const item = rig?.view.rig.items.find(({ name }) => name === about.name);
      return rig && item && seamBrief(item, rig, texts);
    }
  }
}

/** Every kind of block by its name. */
const tables: ReadonlyMap<string, BlockTable> = new Map(tablesIn(fileTable));

function tablesIn(table: BlockTable): [string, BlockTable][] {
  const inner = [...table.rows.values()].flatMap(({ block }: Row) => (block ? tablesIn(block) : []));
  return [[table.name, table], ...inner];
}
