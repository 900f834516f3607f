import type { Change, ChangedMovement, Choice, Reason } from '@/api/types';

/** `Instead of “Front plank” you do: Side plank, knee down.` */
export function changeWords({ name, minutes, verdict, option, how }: ChangedMovement): string {
  switch (verdict) {
    case 'adapted':
      return how === '' ? `“${name}” in your own way.` : `“${name}”: ${how}.`;
    case 'replaced':
      return `Instead of “${name}” you do “${option ?? 'a gentler movement'}”${how === '' ? '' : `, ${how}`}.`;
    case 'leftOut':
      return `During “${name}” you rest or breathe for ${minutes === 1 ? 'a minute' : `${minutes} minutes`}.`;
    case 'asTaught':
      return `“${name}” as taught.`;
  }
}

const numbers = ['', 'This', 'These two', 'These three', 'These four', 'These five', 'These six'];

/** `These four change for the same reason:` */
export function reasonWords({ movements, reasons }: Change): string {
  if (movements.length < 2) return reasons.length === 1 ? 'Because:' : 'The reasons:';
  const these = numbers[movements.length] ?? `These ${movements.length}`;
  return `${these} change for the same ${reasons.length === 1 ? 'reason' : 'reasons'}:`;
}

/** `38 of 50 minutes as taught · 3 movements change` */
export const shareWords = ({
  asTaught,
  minutes,
  changed,
}: {
  asTaught: number;
  minutes: number;
  changed: number;
}) =>
  `${asTaught} of ${minutes} minutes as taught · ${changed === 1 ? '1 movement changes' : `${changed} movements change`}`;

/** What the class as a whole asks of her, beside the movements: each once. */
export const besides = (choice: Choice, changes: readonly Change[]): Reason[] => {
  const told = new Set(changes.flatMap(({ reasons }) => reasons.map(({ text }) => text)));
  return choice.fit.reasons.filter(({ text }) => !told.has(text));
};
