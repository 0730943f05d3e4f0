// Tells the client what its status bar shows, after changes, at most a few times a second.
import type { Status } from '../language/protocol/index.ts';
import type { Session } from './session.ts';

export interface StatusSender {
  changed(): void;
  stop(): void;
}

export function statusSender(
  session: Session,
  busy: () => boolean,
  pause: number,
  send: (status: Status) => void,
): StatusSender {
  let timer: NodeJS.Timeout | undefined;
  let told = '';
  const tell = () => {
    timer = undefined;
    const status: Status = { ...session.tally(), ...session.dates, busy: busy() };
    const said = JSON.stringify(status);
    if (said === told) return;
    told = said;
    send(status);
  };
  return {
    changed() {
      timer ??= setTimeout(tell, pause);
    },
    stop: () => clearTimeout(timer),
  };
}
