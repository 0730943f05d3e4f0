import * as z from 'zod';

/** The command behind words that lead to a line; its one argument is a range of a document. The client has it. */
export const goToCommand = 'rigseam.goTo';

const position = z.object({ line: z.int().nonnegative(), character: z.int().nonnegative() });

/** A range of a document, as the Language Server Protocol writes it. */
export const goToArgumentSchema = z.object({ uri: z.string(), range: z.object({ start: position, end: position }) });
