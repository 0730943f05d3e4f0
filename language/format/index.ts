// The formatter, for the editor and the command line.
export { type Edit, edited, type Formatting, format, type Left, type LineRange } from './format.ts';
export { afterBrace, afterEnter } from './typed.ts';
