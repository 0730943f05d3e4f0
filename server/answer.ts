// Answers to requests of our own: what comes in is checked before anything looks at it.

import { type CancellationToken, type Connection, ErrorCodes, ResponseError } from 'vscode-languageserver';
import type * as z from 'zod';
import type { Ask } from '../language/protocol/index.ts';

/** Serves one kind of request. Params that are not what the kind says are refused with a message for people. */
export function answer<P, R>(
  connection: Connection,
  kind: Ask<P, R>,
  work: (params: P, token: CancellationToken) => R | Promise<R>,
): void {
  connection.onRequest(kind.method, (given: unknown, token: CancellationToken): unknown => {
    const params = kind.params.safeParse(given);
    return params.success ? work(params.data, token) : refused(kind.method, params.error);
  });
}

const refused = (method: string, { issues }: z.ZodError): ResponseError<void> =>
  new ResponseError(
    ErrorCodes.InvalidParams,
    `${method}: ${issues.map(({ path, message }) => `${path.join('.')}: ${message}`).join('; ')}`,
  );
