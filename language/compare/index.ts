// What a change costs: records, not lines.
export { type Asked, compareProjects, comparing } from './compare.ts';
export { compareMarkdown } from './markdown.ts';
export { Comparison } from './schema.ts';
export type { Side } from './side.ts';
