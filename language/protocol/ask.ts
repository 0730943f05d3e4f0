import type * as z from 'zod';

/** One request between client and server: its method, and what is asked and answered, checked at both ends. */
export interface Ask<P, R> {
  readonly method: `rigseam/${string}`;
  readonly params: z.ZodType<P>;
  readonly reply: z.ZodType<R>;
}

/** Declares a request. */
export const ask = <P, R>(method: Ask<P, R>['method'], params: z.ZodType<P>, reply: z.ZodType<R>): Ask<P, R> => ({
  method,
  params,
  reply,
});
