import { useEffect } from 'react';

/** Keeps the screen on while this is looked at, where the browser can. */
export function useWakeLock() {
  useEffect(() => {
    if (!('wakeLock' in navigator)) return;
    let held: WakeLockSentinel | undefined;
    let left = false;
    const request = async () => {
      if (document.visibilityState !== 'visible') return;
      try {
        held = await navigator.wakeLock.request('screen');
        if (left) await held.release();
      } catch {
        // A device low on power may refuse; the screen then goes out as it always does.
      }
    };
    const hold = () => void request();
    hold();
    document.addEventListener('visibilitychange', hold);
    return () => {
      left = true;
      document.removeEventListener('visibilitychange', hold);
      void held?.release();
    };
  }, []);
}
