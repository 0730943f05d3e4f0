// Life cost: what a choice costs over the years, how sure that is, and what would turn the choice.
export * from './breakeven.ts';
export * from './courses.ts';
export * from './expected.ts';
export * from './factors.ts';
export * from './measures.ts';
export * from './moments.ts';
export * from './occurrences.ts';
export * from './outcomes.ts';
export * from './servicelife.ts';
export * from './streams.ts';
export * from './threepoint.ts';
export * from './tornado.ts';
export * from './value.ts';
export * from './working.ts';
