import { useSyncExternalStore } from 'react';

const every = 5_000;

const ticks = (tick: () => void) => {
  const timer = setInterval(tick, every);
  return () => clearInterval(timer);
};

/** The device's clock in steps of five seconds: enough for minutes, and it does not fidget. */
export const useNow = () =>
  useSyncExternalStore(ticks, () => Math.floor(Date.now() / every) * every);
