import type { AnswerKind } from '../../language/authoring/answer-kinds.ts';
import { readAnswerAsk } from '../../language/protocol/index.ts';
import type { LanguageServer } from '../language-server.ts';

/** What the language says against an answer; a server that does not answer is no reason to take it unread. */
export const problemIn =
  (server: LanguageServer, kind: AnswerKind | 'rig-name', atMost?: string) =>
  async (text: string): Promise<string | undefined> => {
    try {
      const { problem } = await server.ask(readAnswerAsk, { kind, text, ...(atMost === undefined ? {} : { atMost }) });
      return problem ?? undefined;
    } catch (error) {
      return `It could not be read: ${error instanceof Error ? error.message : String(error)}`;
    }
  };
