// What is known of rigs, as rows of tables.
import type { RigDeclaration } from '../records/file.ts';
import { isItem } from '../resolve/items.ts';
import type { Project, ResolvedRig } from '../resolve/project.ts';
import type { Event, Item } from '../resolve/types.ts';
import type { ItemStatement } from '../statements/roof.ts';
import { printMoney } from '../values/money.ts';
import type { Said, TableKind } from './kinds.ts';

/** The rows of one rig. */
export function saidOf(kind: TableKind, project: Project, { rig }: ResolvedRig): readonly Said[] {
  if (kind === 'rigs') return [ofRig(project, rig)];
  if (kind === 'seams') return [...rig.items.map((item) => ofItem(project, rig, item)), ...dropped(project, rig)];
  return rig.events
    .filter(({ record }) => record.word === 'inspected')
    .flatMap((event) => ofInspection(rig.name, event));
}

/** The rows of all rigs of some files, by the name of the rig: where a rig is written does not show. */
export function rowsOf(kind: TableKind, project: Project, files: readonly string[]): readonly Said[] {
  const rigs = files.flatMap((file) => project.rigs(file).filter(({ rig }) => rig.kind === 'rig'));
  const byName = rigs.toSorted((a, b) => (a.rig.name < b.rig.name ? -1 : a.rig.name > b.rig.name ? 1 : 0));
  return byName.flatMap((rig) => saidOf(kind, project, rig));
}

function ofRig(project: Project, rig: ResolvedRig['rig']): Said {
  const declaration = declarationOf(project, rig);
  if (!declaration) return { rig: rig.name };
  const { unit, vin, built, inService, acquired, keptUntil, dayRate } = rig.identity;
  const group = declaration.statements.find((s) => s.word === 'group');
  return saying({
    rig: rig.name,
    like: declaration.like?.name,
    under: declaration.under?.name,
    group: group?.group.name,
    unit: unit?.value,
    vin: vin?.value,
    built: built?.value.text,
    'in-service': inService?.value.text,
    acquired: acquired?.value.text,
    'kept-until': keptUntil?.value.text,
    'day-rate': dayRate && printMoney(dayRate.value),
    length: rig.roof?.along.text,
    width: rig.roof?.across.text,
    membrane: rig.roof?.surface,
  });
}

/** What it does not take over from what it is like. */
function dropped(project: Project, rig: ResolvedRig['rig']): readonly Said[] {
  const names = (declarationOf(project, rig)?.statements ?? []).flatMap((s) => (s.word === 'without' ? s.names : []));
  return names.map(({ name }) => ({ rig: rig.name, kind: 'without', name }));
}

function declarationOf(project: Project, { file, at }: ResolvedRig['rig']): RigDeclaration | undefined {
  const found = project.records(file)?.declarations.find((one) => one.at[0] === at[0]);
  return found?.kind === 'rig' ? found : undefined;
}

/** Fields with a column of their own; the other clauses go into `more`, as they are written. */
const own = new Set([
  'name',
  'names',
  'size',
  'run',
  'wideBefore',
  'wide',
  'length',
  'places',
  'on',
  'surface',
  'note',
]);

function ofItem(project: Project, rig: ResolvedRig['rig'], item: Item): Said {
  const { file, at } = item.origin;
  const statement = statementAt(project, file, at[0]);
  const text = project.text(file) ?? '';
  const clause = (field: string) => statement && clauseText(text, statement, field);
  const more = Object.entries(statement?.spans ?? {})
    .filter(([field]) => !own.has(field))
    .sort(([, a], [, b]) => a[0] - b[0])
    .map(([, span]) => plain(text.slice(...span)));
  const sealed = lastWork(rig.events, item.name, 'sealed');
  const taped = lastWork(rig.events, item.name, 'taped');
  return saying({
    rig: rig.name,
    kind: item.kind,
    name: item.name,
    size: statement && (spanText(text, statement, 'size') ?? spanText(text, statement, 'run')),
    at: clause('places'),
    on: clause('on'),
    wide: item.wide?.text,
    length: clause('length'),
    of: clause('surface'),
    more: more.join(' '),
    note: statement?.note,
    sealed: sealed?.date,
    sealant: sealed?.materials,
    taped: taped?.date,
    tape: taped?.materials,
  });
}

function statementAt(project: Project, file: string, start: number): ItemStatement | undefined {
  for (const declaration of project.records(file)?.declarations ?? []) {
    if (declaration.kind !== 'rig' && declaration.kind !== 'model') continue;
    for (const statement of declaration.statements)
      if (statement.at[0] === start && isItem(statement)) return statement;
  }
  return undefined;
}

/** The text of a value. What is written over several lines becomes one, without its remarks. */
function spanText(text: string, { spans }: ItemStatement, field: string): string | undefined {
  const span = spans[field];
  return span && plain(text.slice(...span));
}

const clauseText = (text: string, statement: ItemStatement, field: string): string | undefined =>
  spanText(text, statement, field)?.replace(/^[a-z-]+ /, '');

export function plain(text: string): string {
  const oneLine = text.includes('\n') ? text.replace(/#[^"\n]*$/gm, '') : text;
  return oneLine.replace(/\s+/g, ' ').replaceAll(' ,', ',').trim();
}

/** The last time that all of a seam was worked on. */
function lastWork(events: readonly Event[], item: string, word: 'sealed' | 'taped') {
  const works = worksOn(events, item, word);
  return works.at(-1);
}

export function worksOn(events: readonly Event[], item: string, word: 'sealed' | 'taped') {
  return events.flatMap(({ record, places }) => {
    if (record.word !== word || !places.some((place) => place.item === item && place.from === undefined)) return [];
    return [{ date: record.date.text, materials: (record.materials ?? []).map(({ name }) => name).join(', ') }];
  });
}

function ofInspection(rig: string, { record, findings }: Event): readonly Said[] {
  if (record.word !== 'inspected') return [];
  const heading = { rig, date: record.date.text, by: record.by };
  if (findings.length === 0) return [saying(heading)];
  return findings.flatMap(({ line }) =>
    line.targets.map((target) => {
      const stretch = target.stretch ?? line.stretch;
      const { condition, defects, notSeen, wet } = line.seen;
      return saying({
        ...heading,
        item: target.name,
        stretch: stretch && `${stretch.low.text} to ${stretch.high.text}`,
        condition: [condition, notSeen && 'not-seen', wet && 'wet'].filter(Boolean).join(' '),
        defect: defects.join(' '),
        moisture: line.moisture && `${line.moisture.text}`,
        note: line.note,
      });
    }),
  );
}

/** Without the columns that say nothing. */
function saying(row: Partial<Record<string, string | undefined>>): Said {
  return Object.fromEntries(Object.entries(row).filter(([, cell]) => cell !== undefined && cell !== '')) as Said;
}
