/** Notification from the server, to whoever has asked for a view: what it shows may have changed. No params. */
export const staleMethod = 'rigseam/stale';
