// What changed about one rig.
import { isLibrary } from '../resolve/origin.ts';
import type { ResolvedRig } from '../resolve/project-form.ts';
import type { Dates, Item } from '../resolve/types.ts';
import { changesOf, entriesOf } from './entries.ts';
import { meaningOf } from './meaning.ts';
import { type NamesNow, namesNow } from './names.ts';
import { buyChanged, duesChanged, nothing, outcomeOfRig, sameMoney, visitsChanged } from './outcome.ts';
import type { RigChange, SeamChange } from './schema.ts';
import { blocksOf, type Pair, type Place, type Side } from './side.ts';

/** One of the two states of a rig. */
export interface RigThen {
  readonly side: Side;
  readonly place: Place;
  readonly view: ResolvedRig;
  /** A fleet has it: its visits stand in that fleet's schedule. */
  readonly inFleet: boolean;
}

/**
 * The rigs of a file, resolved once while rigs of the same file are asked for: a whole yard may stand in one. The file before is
 * forgotten.
 */
export function viewsByFile({ project }: Side): (file: string) => readonly ResolvedRig[] {
  let last: { readonly file: string; readonly rigs: readonly ResolvedRig[] } | undefined;
  return (file) => {
    if (last && last.file !== file) project.release(last.file);
    if (last?.file !== file) last = { file, rigs: project.rigs(file) };
    return last.rigs;
  };
}

/** What changed about a rig; undefined where nothing did. One of the two states may be missing. */
export function rigChanged(
  before: RigThen | undefined,
  after: RigThen | undefined,
  dates: Dates,
  fileName: (path: string) => string,
): RigChange | undefined {
  const told = (after ?? before) as RigThen;
  const names = namesNow(before?.place.name ?? '', after?.view);
  const old = before ? outcomeOfRig(before.view, dates, names, before.inFleet) : nothing;
  const now = after ? outcomeOfRig(after.view, dates, names, after.inFleet) : nothing;
  // Into a fleet or out of it: its visits have gone elsewhere, and are told there.
  const elsewhere = before && after && before.inFleet !== after.inFleet;
  const change: RigChange = {
    name: told.place.name,
    ...wasCalled({ ...(before && { before: before.place }), ...(after && { after: after.place }) }),
    change: before && after ? 'changed' : after ? 'added' : 'removed',
    file: fileName(told.place.file),
    seams: seamsChanged(before, after, names),
    records: changesOf(recordsOf(before, names), recordsOf(after, names)),
    dues: duesChanged(old, now),
    buy: buyChanged(old, now),
    visits: elsewhere ? [] : visitsChanged(old, now, () => names),
    ...(old.total && { totalBefore: old.total }),
    ...(now.total && { totalAfter: now.total }),
  };
  const lists = [change.seams, change.records, change.dues, change.buy, change.visits];
  const same =
    change.change === 'changed' &&
    change.was === undefined &&
    lists.every((list) => list.length === 0) &&
    sameMoney(old.total?.money, now.total?.money) &&
    old.total?.complete === now.total?.complete;
  return same ? undefined : change;
}

/** The former name, where it is another. */
export function wasCalled({ before, after }: Pair): { readonly was?: string } {
  const was = before?.name;
  return was !== undefined && after && was !== after.name ? { was } : {};
}

function recordsOf(then: RigThen | undefined, names: NamesNow) {
  if (!then) return [];
  const { project } = then.side;
  return blocksOf(then.side, then.place).flatMap(({ declaration, file }) => {
    const entries = entriesOf(declaration, project.text(file) ?? '', names.item, false);
    if (file !== then.place.file) project.release(file);
    return entries;
  });
}

function seamsChanged(before: RigThen | undefined, after: RigThen | undefined, names: NamesNow) {
  const old = new Map((before?.view.rig.items ?? []).map((item) => [names.item(item.name), item]));
  const now = new Map((after?.view.rig.items ?? []).map((item) => [item.name, item]));
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((name): readonly SeamChange[] => {
    const [then, here] = [old.get(name), now.get(name)];
    const same = then && here && meaningOf({ ...then, name }, names.item) === meaningOf(here, names.item);
    const was = then && here && then.name !== here.name ? { was: then.name } : {};
    if (same && !was.was) return [];
    return [
      {
        name,
        ...was,
        ...(then && !same && { before: written(then, before) }),
        ...(here && !same && { after: written(here, after) }),
      },
    ];
  });
}

/** The line that an item comes from; what is built in stands nowhere. */
function written({ kind, name, origin }: Item, then: RigThen | undefined): string {
  const text = isLibrary(origin.file) ? undefined : then?.side.project.text(origin.file);
  return text === undefined
    ? `${kind} ${name}`
    : text
        .slice(...origin.at)
        .replace(/\s+/g, ' ')
        .trim();
}
