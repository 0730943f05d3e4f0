// The only clock of the project: what day it is here.

export interface Clock {
  /** Today as an ISO date, by the calendar of this place. */
  today(): string;
  /** Calls back once after each midnight. Returns a function that stops it. */
  onNewDay(listener: () => void): () => void;
}

/** A timer set for midnight sleeps with the machine and comes late: a look each minute costs nothing and does not. */
const lookEvery = 60_000;

export const systemClock: Clock = {
  today,
  onNewDay(listener) {
    let day = today();
    const timer = setInterval(() => {
      if (today() === day) return;
      day = today();
      listener();
    }, lookEvery);
    if (typeof timer === 'object') timer.unref(); // in a browser it is a number, and nothing waits for it
    return () => clearInterval(timer);
  },
};

function today(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
