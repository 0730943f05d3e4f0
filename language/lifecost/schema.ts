// The form of the comparison in documents.
import * as z from 'zod';
import { Assumption, Figure } from '../estimate/schema.ts';

/** A figure that is read off a distribution or a search, so that no short formula gives it: its rule says how. */
export const Reading = z
  .strictObject({ value: z.number(), unit: z.string(), text: z.string(), rule: z.string() })
  .readonly();
export type Reading = z.infer<typeof Reading>;

/** One course of work within a way, such as touching up. */
export const CourseLine = z
  .strictObject({
    title: z.string(),
    /** What each of its works costs at today's prices. */
    works: z.array(z.strictObject({ title: z.string(), cost: Figure, number: Reading }).readonly()).readonly(),
    /** Expected present value. */
    present: Figure,
  })
  .readonly();

/** One way to keep the seams tight over the years. */
export const WayLine = z
  .strictObject({
    key: z.string(),
    name: z.string(),
    courses: z.array(CourseLine).readonly(),
    /** Expected present value of all its courses. */
    expected: Figure,
    /** Not exceeded with a chance of 10, 50 and 90 %. */
    low: Reading,
    median: Reading,
    high: Reading,
    /** Expected days off the road over the years. */
    daysOff: Reading,
    /** Present value spent up to the end of each year, from year 0 on. */
    spent: z.array(z.number()).readonly(),
    /** Against touching up: the chance that this way turns out the cheaper one, and the year from which on it is. */
    cheaper: Reading.exactOptional(),
    paysFrom: Reading.exactOptional(),
  })
  .readonly();
export type WayLine = z.infer<typeof WayLine>;

/** What one input does to the difference of two ways, the others as they are. */
export const InputBar = z
  .strictObject({
    input: z.string(),
    low: z.string(),
    high: z.string(),
    /** The difference in present value at the low and at the high end: below 0 the first way is the cheaper one. */
    atLow: Reading,
    atHigh: Reading,
    /** Whether the difference changes its sign between them. */
    decides: z.boolean(),
  })
  .readonly();
export type InputBar = z.infer<typeof InputBar>;

/** Tape against its rival, and what decides between them. */
export const Contest = z
  .strictObject({
    way: z.string(),
    rival: z.string(),
    /** Expected present value of the way less that of its rival. */
    difference: Figure,
    /** The least life of tape, in years, at which it is the cheaper one over the horizon. */
    leastLife: Reading.exactOptional(),
    /** For how long the rig must be kept for it. */
    leastYears: Reading.exactOptional(),
    bars: z.array(InputBar).readonly(),
    /** The whole in sentences. */
    verdict: z.array(z.string()).readonly(),
  })
  .readonly();
export type Contest = z.infer<typeof Contest>;

export const Comparison = z
  .strictObject({
    currency: z.string(),
    horizon: Figure,
    interest: Figure,
    ways: z.array(WayLine).readonly(),
    /** The key of the way that is expected to cost least. */
    cheapest: z.string(),
    contest: Contest.exactOptional(),
    /** Inspections cost the same whichever way is taken: present value, in none of the ways. */
    inspections: Figure.exactOptional(),
    materials: z.array(z.string()).readonly(),
    /** Seams that get no tape, each with the reason. */
    notTaped: z.array(z.strictObject({ item: z.string(), reason: z.string() }).readonly()).readonly(),
    left: z.array(z.strictObject({ way: z.string(), reason: z.string() }).readonly()).readonly(),
    missing: z.array(z.string()).readonly(),
    assumptions: z.array(Assumption).readonly(),
    /** What the figures rest on, in sentences. */
    notes: z.array(z.string()).readonly(),
  })
  .readonly();
export type Comparison = z.infer<typeof Comparison>;

/** A comparison, or why there is none. */
export const CompareResult = z.union([Comparison, z.strictObject({ reason: z.string() }).readonly()]);
export type CompareResult = z.infer<typeof CompareResult>;
