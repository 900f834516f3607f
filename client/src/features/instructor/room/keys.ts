import { useEffect, useEffectEvent } from 'react';
import { isWriting } from '@/components/keyboard/shortcut';
import { stepOfKey } from './steps';

interface Acts {
  onStep: (step: 1 | -1) => void;
  onEscape: () => void;
}

// Space presses what has the focus; only elsewhere it goes on.
const pressedBySpace = (target: EventTarget | null) =>
  target instanceof HTMLElement && target.closest('button, a, summary, input, label') !== null;

/** One key forward, one back, one out; none of them while something is written, and no step under a dialog. */
export function useClassKeys({ onStep, onEscape }: Acts) {
  const pressed = useEffectEvent((event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey || event.repeat) return;
    if (isWriting(event.target)) return;
    if (event.key === 'Escape') {
      onEscape();
      return;
    }
    if (document.querySelector('[aria-modal="true"]') !== null) return;
    const step = stepOfKey(event.key);
    if (step === null || (event.key === ' ' && pressedBySpace(event.target))) return;
    event.preventDefault();
    onStep(step);
  });
  useEffect(() => {
    const listen = (event: KeyboardEvent) => pressed(event);
    document.addEventListener('keydown', listen);
    return () => document.removeEventListener('keydown', listen);
  }, []);
}
