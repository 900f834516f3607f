import { useLocalStorage } from '@mantine/hooks';
import { useEffect, useEffectEvent } from 'react';

/** Whether a key pressed there is meant for the text being written, not for a shortcut. */
export const isWriting = (target: EventTarget | null) =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    target instanceof HTMLTextAreaElement ||
    target instanceof HTMLSelectElement ||
    (target instanceof HTMLInputElement && !['checkbox', 'radio', 'button'].includes(target.type)));

/** Single keys can be switched off, for people whose speech or switch input sends stray letters. */
export const useShortcutsOn = () =>
  useLocalStorage({
    key: 'studio.single-keys',
    defaultValue: true,
    getInitialValueInEffect: false,
  });

export function useShortcut(key: string, act: () => void) {
  const [on] = useShortcutsOn();
  const pressed = useEffectEvent((event: KeyboardEvent) => {
    if (event.key !== key || event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
    if (isWriting(event.target) || document.querySelector('[aria-modal="true"]') !== null) return;
    event.preventDefault();
    act();
  });
  useEffect(() => {
    if (!on) return;
    const listen = (event: KeyboardEvent) => pressed(event);
    document.addEventListener('keydown', listen);
    return () => document.removeEventListener('keydown', listen);
  }, [on]);
}
