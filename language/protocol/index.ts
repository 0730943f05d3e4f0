// What the extension client and the language server say to each other beyond the Language Server Protocol: a file for each
// matter. Client and server meet only here.
export { type Ask, ask } from './ask.ts';
export * from './authoring.ts';
export * from './compare.ts';
export * from './files.ts';
export * from './fleet-calendar.ts';
export * from './go-to.ts';
export * from './papers.ts';
export * from './roof-plan.ts';
export * from './rules.ts';
export * from './settings.ts';
export * from './stale.ts';
export * from './status.ts';
export * from './tables.ts';
