// Tells the editor's views that what they show may have changed, once one of them has asked for something.
import type { Connection } from 'vscode-languageserver';
import { staleMethod } from '../language/protocol/index.ts';
import type { Session } from './session.ts';

/** At most once in so many milliseconds: at once for the eye, and not on every key. */
const pause = 120;

export interface StaleNotices {
  /** A view was asked for: it wants to hear of changes. */
  wanted(): void;
  stop(): void;
}

export function staleNotices(connection: Connection, session: Session): StaleNotices {
  let isWanted = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  session.onStale(() => {
    if (!isWanted || timer !== undefined) return;
    timer = setTimeout(() => {
      timer = undefined;
      void connection.sendNotification(staleMethod);
    }, pause);
  });
  return {
    wanted() {
      isWanted = true;
    },
    stop: () => clearTimeout(timer),
  };
}
