// Mistakes as people make them, each with the rule that must name it and the line that it must be named on.
import type { Page } from './page.ts';
import type { GeneratedRig } from './records.ts';

export interface Site {
  readonly rig: GeneratedRig;
  /** The file of the rig. */
  readonly own: Page;
  /** The file that its newest records stand in: the same, or a history. */
  readonly records: Page;
}

export interface Mistake {
  readonly rule: string;
  /** Makes the mistake; tells where it must be found, or nothing where the rig gives no occasion for it. */
  readonly make: (site: Site) => Made | undefined;
}

export interface Made {
  readonly in: Page;
  readonly line: number;
  /** What follows from it and is rightly said as well, in the same file. */
  readonly also?: { readonly rule: string; readonly line: number };
}

const at = (page: Page, line: number | undefined) => (line === undefined ? undefined : { in: page, line });
/** A line changed in the newest records. */
const changed =
  (pattern: RegExp, to: string): Mistake['make'] =>
  ({ records }) =>
    at(records, records.change(pattern, to));
/** Lines added to the newest records; the mistake is in the last of them. */
const added =
  (...lines: readonly string[]): Mistake['make'] =>
  ({ records }) =>
    at(records, records.add(...lines) + lines.length - 1);
/** A line changed in the block of the rig. */
const inRig =
  (pattern: RegExp, to: string): Mistake['make'] =>
  ({ own }) =>
    at(own, own.change(pattern, to));
const addedToRig =
  (...lines: readonly string[]): Mistake['make'] =>
  ({ own }) =>
    at(own, own.add(...lines) + lines.length - 1);

/** Of the text itself. */
const typing: readonly Mistake[] = [
  {
    rule: 'unclosed-block',
    make: ({ records }) => {
      const heading = records.find(/^ {2}inspected .* \{$/);
      records.cut(/^ {2}\}$/);
      return at(records, heading);
    },
  },
  { rule: 'missing-open-brace', make: changed(/^( {2}inspected .*) \{$/, '$1') },
  { rule: 'stray-brace', make: added('  washed    2026-06-02 with MildWash', '  }') },
  { rule: 'merge-conflict', make: added('<<<<<<< HEAD') },
  { rule: 'unclosed-text', make: changed(/by "([^"]*)"$/, 'by "$1') },
  { rule: 'wrong-date', make: added('  washed    2026-0') },
  { rule: 'wrong-date', make: changed(/^( {2}washed {4})\d{4}-\d\d-\d\d/, '$12023-02-30') },
  { rule: 'unknown-statement', make: changed(/^ {2}washed/, '  wahsed') },
  { rule: 'two-statements', make: added('  washed    2026-06-02 with MildWash tightened 2026-06-03 ladder-feet') },
  { rule: 'missing-value', make: addedToRig('  wash      skylight, after 2027-05-01') },
];

/** Of names and values. */
const naming: readonly Mistake[] = [
  { rule: 'unknown-seam', make: changed(/^ {4}front {7}/, '    frnt        ') },
  { rule: 'unknown-material', make: changed(/with MildWash/, 'with MildWosh') },
  { rule: 'unknown-name', make: inRig(/ under (Shop|Coast|Desert) /, ' under Harbour ') },
  { rule: 'unknown-name', make: inRig(/^ {2}group .*/, '  group        Costal') },
  { rule: 'unknown-word', make: changed(/^( {4}\S+ +)cracked/, '$1craked') },
  { rule: 'unknown-rule', make: addedToRig('  accept    look-hart-due until 2027-04-15 because "spring"') },
  {
    rule: 'file-not-found',
    make: ({ own }) => {
      const line = own.change(/^use "..\/..\/shop\/policy.rig"/, 'use "../../shop/polcy.rig"');
      const under = own.find(/^ {2}group /) ?? own.find(/^rig /);
      return line && under ? { in: own, line, also: { rule: 'unknown-name', line: under } } : undefined;
    },
  },
  { rule: 'wrong-value', make: changed(/took 1 h/, 'took 1 ft') },
  { rule: 'wrong-value', make: changed(/air \d+ F/, 'air 66') },
  { rule: 'line-twice', make: addedToRig('  kept-until 2030-10-31') },
  { rule: 'two-conditions', make: changed(/^( {4}front {7}sound)/, '$1 chalky') },
  { rule: 'vin-check-digit', make: inRig(/"1ZZBE/, '"1ZZBF') },
];

/** Of dates. */
const dates: readonly Mistake[] = [
  { rule: 'in-the-future', make: added('  washed    2027-03-02 with MildWash') },
  { rule: 'before-built', make: added('  washed    2014-05-02 with MildWash') },
  { rule: 'dates-out-of-order', make: inRig(/^( {2}acquired +)\S+/, '$12013-01-20') },
  { rule: 'days-reversed', make: added('  trip      2026-07-12 to 2026-07-02') },
  { rule: 'after-beyond-before', make: addedToRig('  wash      with MildWash after 2027-09-01 before 2027-06-01') },
  { rule: 'plan-in-the-past', make: addedToRig('  tighten   ladder-feet before 2026-09-01') },
  { rule: 'accept-unused', make: addedToRig('  accept    look-hard-due until 2026-04-15 because "spring"') },
];

/** Of the trade. */
const trade: readonly Mistake[] = [
  {
    rule: 'tape-too-early',
    make: added(
      '  stripped  2026-06-02 slide-roof',
      '  sealed    2026-06-02 slide-roof with Wipe with GreyLap air 70 F',
      '  taped     2026-06-06 slide-roof with Wipe with EdgeTape4 air 70 F',
    ),
  },
  {
    rule: 'silicone-underneath',
    make: added(
      '  stripped  2026-06-02 vent-2',
      '  sealed    2026-06-02 vent-2 with Wipe with ClearSilicone air 70 F',
      '  sealed    2026-09-10 vent-2 with Wipe with GreyLap air 70 F',
    ),
  },
  { rule: 'left-bare', make: added('  stripped  2026-09-02 skylight') },
  { rule: 'air-too-cold', make: changed(/^( {2}sealed .*)air \d+ F/, '$1air 21 F') },
  {
    rule: 'washed-too-early',
    make: added(
      '  stripped  2026-09-02 vent-1',
      '  sealed    2026-09-02 vent-1 with Wipe with GreyLap air 70 F',
      '  washed    2026-09-03 with MildWash',
    ),
  },
  {
    rule: 'used-too-little',
    make: added(
      '  stripped  2026-09-02 vent-1',
      '  sealed    2026-09-02 vent-1 with Wipe with GreyLap used 1 fl-oz air 70 F',
    ),
  },
  {
    rule: 'follow-up-overdue',
    make: changed(/^ {4}all {9}sound(.*)$/, '    vent-1      open$1\n    rest        sound'),
  },
  {
    rule: 'stretch-past-end',
    make: changed(/^ {4}rest {8}sound$/, '    curbside    hairline from 6 ft to 90 ft\n    rest        sound'),
  },
  { rule: 'overlap', make: addedToRig('  opening   vent-3 16 in by 16 in at 5 ft 6 in, 2 ft of abs') },
  { rule: 'off-the-roof', make: addedToRig('  opening   vent-3 16 in by 16 in at 60 ft, 2 ft of abs') },
  { rule: 'evidence-missing', make: added('  washed    2026-06-02 with MildWash photo "roof.jpg"') },
  {
    rule: 'sealed-a-gasket',
    make: ({ own, records }) => {
      own.add('  gasket    air-con 14 in by 14 in at 20 ft, 4 ft');
      return at(records, records.add('  sealed    2026-06-02 air-con with Wipe with GreyLap air 70 F'));
    },
  },
];

export const mistakes: readonly Mistake[] = [...typing, ...naming, ...dates, ...trade];

/** Mistakes in the file of a fleet; its first booking and its shelf are written by every fleet. */
export const fleetMistakes: readonly { readonly rule: string; readonly make: (fleet: Page) => number | undefined }[] = [
  { rule: 'best-before-past', make: (fleet) => fleet.change(/best-before 2027-12$/, 'best-before 2026-06') },
  {
    rule: 'booked-unknown',
    make: (fleet) => fleet.add('  booked       Rgi00001 2027-09-20 to 2027-09-22 for "school"'),
  },
  {
    rule: 'bookings-overlap',
    make: (fleet) => {
      const first = fleet.find(/^ {2}booked /);
      if (first === undefined) return undefined;
      return fleet.change(/^( {2}booked .*)$/, '$1\n$1') && first + 1;
    },
  },
  { rule: 'no-rigs', make: (fleet) => fleet.add('  rigs         "west/*.rig"') },
  { rule: 'bay-too-short', make: (fleet) => fleet.change(/indoor 40 ft/, 'indoor 12 ft') },
];
