import { useSyncExternalStore } from 'react';

// Whether the studio's server answers. Whoever asks the server and gets no answer says so here; from
// then on its health is asked about until it is back.

const retryAfter = 3_000;

let lost = false;
let again: ReturnType<typeof setTimeout> | undefined;
const listeners = new Set<() => void>();

function set(now: boolean) {
  clearTimeout(again);
  if (now) again = setTimeout(() => void probe(), retryAfter);
  if (now === lost) return;
  lost = now;
  for (const listener of listeners) listener();
}

/** Asks whether the server is there. A device that knows itself offline need not ask. */
async function probe() {
  set(!(navigator.onLine && (await answers())));
}

async function answers() {
  try {
    return (await fetch('/healthz', { cache: 'no-store' })).ok;
  } catch {
    return false;
  }
}

export const connection = {
  isLost: () => lost,
  lose: () => set(true),
  found: () => set(false),
  probe,
  subscribe: (listener: () => void) => {
    heed();
    listeners.add(listener);
    return () => void listeners.delete(listener);
  },
};

let heeding = false;

/** The device itself knows first when it goes offline, and when to ask again. */
function heed() {
  if (heeding) return;
  heeding = true;
  window.addEventListener('offline', () => set(true));
  window.addEventListener('online', () => void probe());
}

/** True while the server cannot be reached. */
export const useConnectionLost = () =>
  useSyncExternalStore(connection.subscribe, connection.isLost);
