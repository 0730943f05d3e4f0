// A pause in which whatever else waits gets its turn.

/** Settles after all that waits already. A timer would not do in a browser: there it waits for 4 ms at least. */
export function nextTurn(): Promise<void> {
  if (typeof setImmediate === 'function') return new Promise((resolve) => setImmediate(resolve));
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
