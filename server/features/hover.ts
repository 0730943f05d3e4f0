// Hover: what a word means, what stands behind a name, and the sum behind a figure.
import type { HoverProvider } from 'langium/lsp';
import type { GroupDeclaration } from '../../language/records/file.ts';
import { catalogue } from '../../language/rules/catalogue.ts';
import { conditions, defects } from '../../language/statements/words.ts';
import { type Meaning, meaningAt } from '../cursor/meaning.ts';
import { rangeOf } from '../places.ts';
import { conversionOf } from './conversions.ts';
import { explained, inline, sentence } from './explained.ts';
import { declarationAround, type Features, type Here, hereIn, rigAround } from './here.ts';
import { materialText, surfaceText } from './material-text.ts';
import { seamText } from './seam-text.ts';
import { itemNamed, namedFile, targetsOf } from './targets.ts';

export const hovers = (features: Features): HoverProvider => ({
  getHoverContent(document, { position }) {
    const here = hereIn(features, document);
    const meaning = meaningAt(here.lines.lines, here.document.offsetAt(position));
    const value = meaning && textFor(features, here, meaning);
    if (!meaning || value === undefined) return undefined;
    return { contents: { kind: 'markdown', value }, range: rangeOf(here.document, meaning.at) };
  },
});

function textFor(features: Features, here: Here, meaning: Meaning): string | undefined {
  switch (meaning.kind) {
    case 'statement': {
      const { word, help, example } = meaning.row;
      const figures = figuresOfPlan(features, here, meaning);
      return [`**${word}**: ${sentence(help)}`, `\`\`\`rig\n${example}\n\`\`\``, ...figures].join('\n\n');
    }
    case 'clause': {
      const { word, help, slot } = meaning.clause;
      const example = slot.example === '' ? '' : `\n\n\`\`\`rig\n${word} ${slot.example}\n\`\`\``;
      return `**${word}**: ${sentence(help)}${example}`;
    }
    case 'quantity':
      return conversionOf(meaning.part);
    case 'text':
      return pictureText(features, here.path, meaning);
    case 'name':
      return nameText(features, here, meaning);
  }
}

/** What a plan takes, with the sums: on its statement word. */
function figuresOfPlan(features: Features, here: Here, { around, at }: Meaning): string[] {
  const rig = rigAround(features, here.path, around);
  const job = rig?.estimate.jobs.find((one) => one.file === here.path && one.at[0] === at[0]);
  if (!job) return [];
  const { tapeLength, beadLength, sealantVolume } = job;
  return [tapeLength, beadLength, sealantVolume].flatMap((figure) => (figure ? [explained(figure, here.texts)] : []));
}

function pictureText(features: Features, path: string, meaning: Meaning & { readonly kind: 'text' }) {
  const file = namedFile(path, meaning);
  const [target] = targetsOf(features, path, meaning);
  if (file === undefined || !target || !/\.(png|jpe?g|gif|webp)$/i.test(file)) return undefined;
  return `![${inline(meaning.text)}](${encodeURI(`file://${file.startsWith('/') ? '' : '/'}${file}`)}|width=320)`;
}

function nameText(features: Features, here: Here, meaning: Meaning & { readonly kind: 'name' }): string | undefined {
  const { name, offers, around } = meaning;
  const { project } = features.session;
  const rig = rigAround(features, here.path, around);
  const declaration = declarationAround(features, here.path, around);
  const from = declaration?.kind === 'history' ? (rig?.view.rig.file ?? here.path) : here.path;
  const found = rig && itemNamed(rig, name);
  const item = rig && found && { rig, item: found };
  for (const offer of offers) {
    switch (offer.kind) {
      case 'seams':
      case 'new-name': {
        if (item) return seamText(item.item, item.rig, here.texts, features.session.dates);
        if (declaration?.name === name && around.length === 1)
          return declaration.kind === 'group'
            ? groupText(declaration)
            : declarationText(declaration.kind, name, declaration.doc);
        break;
      }
      case 'materials': {
        const material = project.material(from, name);
        if (material) return materialText(material, here.texts);
        break;
      }
      case 'surfaces': {
        const surface = project.surface(from, name);
        if (surface) return surfaceText(surface, here.texts);
        break;
      }
      case 'rules': {
        const entry = catalogue.get(name);
        if (entry) return `**${name}** (${entry.severity}): ${sentence(entry.title)}\n\n${sentence(entry.why)}`;
        break;
      }
      case 'words': {
        // An edge and a cap have no names but those of their sides.
        if (item && meaning.row.class === 'item')
          return seamText(item.item, item.rig, here.texts, features.session.dates);
        const text = wordText(name, offer.words);
        if (text !== undefined) return text;
        break;
      }
      default: {
        const [target] = targetsOf(features, here.path, meaning);
        const declared =
          target && project.records(target.file)?.declarations.find(({ nameAt }) => nameAt === target.at);
        if (declared?.kind === 'group') return groupText(declared);
        if (declared) return declarationText(declared.kind, declared.name, declared.doc);
      }
    }
  }
  return undefined;
}

const declarationText = (kind: string, name: string, doc: string | undefined) =>
  [`**${inline(name)}**, a ${kind}`, ...(doc === undefined ? [] : [inline(doc)])].join('\n\n');

/** A group with the policy that its rigs are under where they name none. */
function groupText({ name, under, doc, statements }: GroupDeclaration): string {
  const policy = under ? `, under **${inline(under.name)}** where they name no policy themselves` : '';
  return [
    `**${inline(name)}**, a group of rigs${policy}`,
    ...(doc === undefined ? [] : [inline(doc)]),
    ...statements.map(({ text }) => inline(text)),
  ].join('\n\n');
}

/** A condition with its place in the order, a defect with the condition it stands for. */
function wordText(word: string, words: readonly string[]): string | undefined {
  if (!words.includes('sound') || !words.includes('open')) return undefined;
  if (Object.hasOwn(defects, word))
    return `**${word}**: a defect; it counts as \`${defects[word as keyof typeof defects]}\` where no condition is written.`;
  if (!(conditions as readonly string[]).includes(word)) return undefined;
  return `**${word}**: a condition. From best to worst: ${conditions.map((one) => (one === word ? `**${one}**` : one)).join(', ')}.`;
}
