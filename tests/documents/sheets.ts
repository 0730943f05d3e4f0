// The sheets of a text or of an example, and readers of HTML and XML that are not ours.
import { DOMParser, type Element as XmlElement } from '@xmldom/xmldom';
import { type DefaultTreeAdapterTypes, parse } from 'parse5';
import { papersOf } from '../../language/documents/papers.ts';
import { type PlanOptions, roofPlan } from '../../language/documents/roof/index.ts';
import { sheetsOf } from '../../language/documents/sheets/index.ts';
import { createProject } from '../../language/resolve/project.ts';
import type { Dates, RigView } from '../../language/resolve/types.ts';
import { rigState } from '../../language/seams/index.ts';
import { filesOf, projectOf } from '../project/workspace.ts';
import { dates, single } from './examples.ts';

type Texts = Readonly<Record<string, string>>;

/** The only rig of a text. */
export function rigOf(text: string): RigView {
  const [view] = projectOf({ 'a.rig': text })
    .rigs('a.rig')
    .filter(({ rig }) => rig.kind === 'rig');
  if (!view) throw new Error('the text has no rig');
  return view;
}

export const planText = (view: RigView, options: PlanOptions = {}, asOf: string = dates.asOf): string =>
  roofPlan(view, rigState(view, asOf), options);

export function sheetsOfRig(view: RigView, on: Dates = dates): ReadonlyMap<string, string> {
  const subject = { kind: 'rig', view } as const;
  return new Map(sheetsOf(subject, papersOf(subject, on), on).map(({ name, text }) => [name, text]));
}

/** The sheets of every rig and fleet of a folder, by file name. */
export function sheetsOfFolder(texts: Texts): ReadonlyMap<string, string> {
  const project = createProject(filesOf(texts));
  const out = new Map<string, string>();
  for (const path of Object.keys(texts)) {
    for (const view of project.rigs(path)) {
      if (view.rig.kind === 'rig') for (const [name, text] of sheetsOfRig(view)) out.set(name, text);
    }
    for (const { fleet, views } of project.fleets(path)) {
      const subject = { kind: 'fleet', fleet, views } as const;
      for (const { name, text } of sheetsOf(subject, papersOf(subject, dates), dates)) out.set(name, text);
    }
  }
  return out;
}

export function sheet(name: string, from: ReadonlyMap<string, string>): string {
  const text = from.get(name);
  if (text === undefined) throw new Error(`there is no ${name} among ${[...from.keys()].join(', ')}`);
  return text;
}

/** Elements of an XML text; whatever is not well-formed throws. */
export function xml(text: string): { readonly root: XmlElement; readonly all: readonly XmlElement[] } {
  const onError = (level: string, message: string) => {
    throw new Error(`${level}: ${message}`);
  };
  const root = new DOMParser({ onError }).parseFromString(text, 'image/svg+xml').documentElement;
  if (!root) throw new Error('no root');
  return { root, all: [root, ...Array.from(root.getElementsByTagName('*'))] };
}

type Node = DefaultTreeAdapterTypes.ChildNode;
export type HtmlElement = DefaultTreeAdapterTypes.Element;

/** What a parser by the HTML standard makes of a page: its elements in order and the errors that it found. */
export function html(text: string): { readonly all: readonly HtmlElement[]; readonly errors: readonly string[] } {
  const errors: string[] = [];
  const document = parse(text, { onParseError: ({ code, startLine }) => errors.push(`${code} in line ${startLine}`) });
  const all: HtmlElement[] = [];
  const walk = (nodes: readonly Node[]) => {
    for (const node of nodes) {
      if (!('tagName' in node)) continue;
      all.push(node);
      walk(node.childNodes);
    }
  };
  walk(document.childNodes);
  return { all, errors };
}

export const attribute = ({ attrs }: HtmlElement, name: string): string | undefined =>
  attrs.find((one) => one.name === name)?.value;

export function textOf(element: HtmlElement): string {
  return element.childNodes
    .map((node) => ('value' in node ? node.value : 'tagName' in node ? textOf(node) : ''))
    .join('');
}

/** Fills the blanks of the lines of a record with something of the right form. */
export function filled(lines: string): string {
  return lines
    .replaceAll('____-__-__', '2026-11-20')
    .replaceAll('"____"', '"K1"')
    .replaceAll('____ %', '12 %')
    .replaceAll('suspect ____', 'suspect front')
    .replaceAll('air ____', 'air 60')
    .replaceAll('surface ____', 'surface 66')
    .replaceAll('____', '2');
}

/** The rig of the example as it is read with more lines in its history. */
export function rigWith(lines: string): RigView['rig'] {
  const [view] = projectOf({ ...single, 'wren/2027.rig': `history Wren {\n${lines}\n}\n` })
    .rigs('wren.rig')
    .filter(({ rig }) => rig.kind === 'rig');
  if (!view) throw new Error('the example has no rig');
  return view.rig;
}
