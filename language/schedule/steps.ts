// The steps of a visit in the order of work, each with what has to come before it.
import { isWashed } from '../estimate/labour.ts';
import { compareKeys, layKey } from '../measure/layorder.ts';
import { whyNoSealant, whyNoTape } from '../measure/treatable.ts';
import type { Item, Rig } from '../resolve/types.ts';
import { minutesOf } from './hours.ts';
import type { Job } from './job.ts';
import { laidUnder, layNotes } from './laying.ts';
import { namesOf, openers, rankOf } from './words.ts';
import { beddingOf, lookOf, type Part, plain, sealingOf, strippingOf, tapingOf, wordOf } from './work.ts';

/** A task of a visit that has no day yet. Its key is unique in its visit. */
export interface Step extends Part {
  readonly key: string;
  readonly after: readonly string[];
  /** The jobs that it belongs to; none for what the whole visit needs. */
  readonly jobs: readonly Job[];
  /** Steps of one number are not parted by a night if one day can hold them. */
  readonly run: number;
  /** Runs of one number leave an item open in between: no night parts them either, if one day can hold them all. */
  readonly whole: number;
}

/** The steps so far, and what the next one comes after. */
interface Course {
  readonly steps: Map<string, Step>;
  /** The last step on each item. */
  readonly lastOn: Map<string, string>;
  /** What comes before all work on any item. */
  ground: readonly string[];
  run: number;
  whole: number;
}

/**
 * The steps of the jobs that are done in one visit. Set-up, covers and washing come once; under a
 * roof all is stripped before anything is laid, else an item is opened just before it is closed, where nothing is to be
 * laid across it; tape is laid in lay order, sealant after tape; the covers go back on at the end. An item that two plans
 * of a kind name is worked on once.
 */
export function stepsOf(jobs: readonly Job[], rig: Rig, roofed = false): readonly Step[] {
  const ordered = [...jobs].sort((a, b) => rankOf(a.word) - rankOf(b.word) || a.row - b.row);
  const work = onceEach(ordered, rig);
  const of = (...words: readonly Job['word'][]) => work.filter(({ job }) => words.includes(job.word));
  const course: Course = { steps: new Map(), lastOn: new Map(), ground: [], run: 0, whole: 0 };
  const covers = coversOf(ordered, rig);

  behindGround(course, [setUp(rig)], []);
  const looks = ordered.filter(({ word }) => word === 'inspect');
  if (looks.length > 0) behindGround(course, lookOf(looks, rig), looks);
  if (covers.length > 0) behindGround(course, [coverPart('take the covers off', covers, rig)], []);
  const washes = ordered.filter(({ word }) => word === 'wash');
  if (isWashed(ordered.map(({ takeoff }) => takeoff))) behindGround(course, [washOf(washes, rig)], washes);

  const opening = of('strip', 'replace', 'rebed', 'tighten', 'dry', 'patch');
  const tapes = inLayOrder(of('tape'), rig);
  const seals = of('seal').filter(({ item }) => whyNoSealant(item) === undefined);
  const alone = roofed ? new Set<Item>() : closedAlone(opening, tapes, seals);
  for (const one of opening) {
    if (alone.has(one.item)) continue;
    course.whole++;
    openItem(course, one);
  }
  const begin = (item: Item) => {
    if (!alone.has(item)) return;
    course.whole++;
    for (const one of opening) if (one.item === item) openItem(course, one);
  };
  for (const item of alone) {
    if (tapes.some((tape) => tape.item === item)) continue;
    begin(item);
    for (const one of seals) if (one.item === item) sealItem(course, one);
  }
  layTapes(course, tapes, rig, begin);
  for (const one of seals) {
    if (alone.has(one.item) && !tapes.some(({ item }) => item === one.item)) continue;
    course.whole++;
    sealItem(course, one);
  }
  for (const job of ordered) {
    const everywhere = job.word === 'coat' || job.word === 'cover' || (job.items.length === 0 && job.word === 'dry');
    const items = rig.items.filter(({ name }) => job.items.includes(name));
    if (everywhere) atEnd(course, wordOf(job, items), [job]);
  }
  if (covers.length > 0) atEnd(course, [coverPart('put the covers back on', covers, rig)], []);
  return [...course.steps.values()];
}

interface OnItem {
  readonly job: Job;
  readonly item: Item;
}

/** Every job on every item of its own; a stretch that an earlier plan of the same kind names is left to that one. */
function onceEach(jobs: readonly Job[], rig: Rig): readonly OnItem[] {
  const seen = new Set<string>();
  return jobs.flatMap((job) =>
    job.items.flatMap((name) => {
      const item = rig.items.find((each) => each.name === name);
      const keys = job.plan.places
        .filter((place) => place.item === name)
        .map(({ from, to }) => `${job.word} ${name} ${from ?? ''} ${to ?? ''}`);
      if (!item || keys.every((key) => seen.has(key))) return [];
      for (const key of keys) seen.add(key);
      return [{ job, item }];
    }),
  );
}

/** Items that are opened and closed, and that no tape on another one crosses: they need not lie open while others are worked on. */
function closedAlone(opening: readonly OnItem[], tapes: readonly OnItem[], seals: readonly OnItem[]): Set<Item> {
  const closed = new Set([...tapes, ...seals].map(({ item }) => item));
  const isCrossed = (item: Item) => tapes.some((tape) => laidUnder(item, tape.item) || laidUnder(tape.item, item));
  return new Set(
    opening.flatMap(({ job, item }) => (openers.has(job.word) && closed.has(item) && !isCrossed(item) ? [item] : [])),
  );
}

function openItem(course: Course, { job, item }: OnItem): void {
  const parts = job.word === 'strip' ? strippingOf(job, item) : job.word === 'rebed' ? beddingOf(job, item) : [];
  onItem(course, parts.length > 0 ? parts : wordOf(job, [item]), item, job);
}

function sealItem(course: Course, { job, item }: OnItem): void {
  const earlier = course.steps.get(course.lastOn.get(item.name) ?? '')?.task;
  onItem(course, sealingOf(job, item, earlier), item, job);
}

function add({ steps, run, whole }: Course, part: Part, after: readonly string[], jobs: readonly Job[]): string {
  const stem = [part.task, ...part.items].join('/');
  let key = stem;
  for (let i = 2; steps.has(key); i++) key = `${stem}/${i}`;
  steps.set(key, { ...part, key, after: [...new Set(after)], jobs, run, whole });
  return key;
}

/** Something that all later work waits for. */
function behindGround(course: Course, parts: readonly Part[], jobs: readonly Job[]): void {
  course.run++;
  course.whole++;
  for (const part of parts) course.ground = [add(course, part, course.ground, jobs)];
}

/** Parts one after the other, behind what was done on the item. */
function onItem(course: Course, parts: readonly Part[], item: Item, job: Job, also: readonly string[] = []): string[] {
  course.run++;
  const last = course.lastOn.get(item.name);
  let before = last === undefined ? course.ground : [last];
  const keys = parts.map((part) => {
    const key = add(course, part, layingTasks.has(part.task) ? [...before, ...also] : before, [job]);
    before = [key];
    return key;
  });
  const end = keys.at(-1);
  if (end !== undefined) course.lastOn.set(item.name, end);
  return keys;
}

/** Something that waits for all work so far. */
function atEnd(course: Course, parts: readonly Part[], jobs: readonly Job[]): void {
  course.run++;
  course.whole++;
  for (const part of parts) {
    const ends = course.lastOn.size > 0 ? [...course.lastOn.values()] : course.ground;
    course.lastOn.set(part.task, add(course, part, ends, jobs));
  }
}

const layingTasks: ReadonlySet<string> = new Set(['lay', 'frame']);

function inLayOrder(work: readonly OnItem[], rig: Rig): readonly OnItem[] {
  return work
    .filter(({ item }) => whyNoTape(item) === undefined)
    .sort((a, b) => compareKeys(layKey(a.item, rig, 1, 0), layKey(b.item, rig, 1, 0)));
}

/** `begin` opens an item that lay closed until then. */
function layTapes(course: Course, ordered: readonly OnItem[], rig: Rig, begin: (item: Item) => void): void {
  const begun = new Set<Item>();
  const laid: { readonly item: Item; readonly key: string }[] = [];
  for (const { job, item } of ordered) {
    course.whole++;
    if (!begun.has(item)) begin(item);
    begun.add(item);
    const under = laid.filter((each) => laidUnder(each.item, item));
    const parts = tapingOf(
      job,
      item,
      layNotes(
        item,
        under.map((each) => each.item.name),
        rig,
      ),
    );
    const lays = onItem(
      course,
      parts,
      item,
      job,
      under.map(({ key }) => key),
    );
    for (const key of lays) if (layingTasks.has(course.steps.get(key)?.task ?? '')) laid.push({ item, key });
  }
}

const treating: ReadonlySet<Job['word']> = new Set(['tape', 'seal', 'strip', 'replace', 'rebed']);

/** Covers, shrouds and caps of what is treated. */
function coversOf(jobs: readonly Job[], rig: Rig): readonly Item[] {
  const treated = new Set(jobs.flatMap(({ word, takeoff }) => (treating.has(word) ? takeoff.items : [])));
  return rig.items.filter((item) => item.comesOff && treated.has(item));
}

function setUp(rig: Rig): Part {
  const minutes = minutesOf('set-up', { times: 1 }, rig);
  return { ...plain('set-up', 'set up, and clear away at the end', [], minutes), because: ['once for each visit'] };
}

/** The rate is for off and on: half of it each time. */
function coverPart(what: string, covers: readonly Item[], rig: Rig): Part {
  const names = covers.map(({ name }) => name);
  const times = covers.reduce((sum, { count }) => sum + count, 0);
  const part = plain('cover', `${what}: ${namesOf(names)}`, names, minutesOf('cover', { times }, rig) / 2);
  return { ...part, because: ['covers come off before anything is washed, and go back on when all else is done'] };
}

/** The whole roof is washed once a visit, and dries. */
function washOf(washes: readonly Job[], rig: Rig): Part {
  const named = washes.flatMap(({ materials }) => materials.map(({ name }) => name));
  const usual = rig.policy.washWith?.value;
  return {
    ...plain('wash', 'wash and rinse the roof, let it dry', [], minutesOf('wash', 'roof', rig)),
    materials: [...new Set(named.length > 0 || usual === undefined ? named : [usual])],
    waits: minutesOf('dry', { times: 1 }, rig),
    because: ['once for each visit: nothing sticks to dirt, and nothing is laid on a wet roof'],
  };
}
