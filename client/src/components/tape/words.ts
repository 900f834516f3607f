import type { TapeData } from '@/api/types';
import { verdictWords } from '@/components/verdict/words';
import { fullDate, shortDay } from '@/components/time/days';

interface Facts {
  age?: string | null;
  nextStage?: { name: string; on: string } | null;
}

/** What the tape shows, as sentences, for those who do not see it. */
export function tapeWords(tape: TapeData, { age, nextStage }: Facts = {}): string[] {
  const said = [`Today is ${fullDate(tape.today)}${age == null ? '' : `, ${age}`}.`];
  if (tape.bornOn != null) said.push(`Birth on ${fullDate(tape.bornOn)}.`);
  else if (tape.dueDate != null) said.push(`Due on ${fullDate(tape.dueDate)}.`);
  for (const { name, from, to } of tape.bands)
    said.push(
      `${capital(name)}: from ${fullDate(from)}${to == null ? ' on' : ` to ${fullDate(to)}`}.`,
    );
  if (nextStage != null) said.push(`Next: ${nextStage.name} from ${fullDate(nextStage.on)}.`);
  for (const { from, to } of tape.letters)
    said.push(`Clearance letter from ${fullDate(from)} to ${fullDate(to)}.`);
  for (const { className, on, verdict, status } of tape.bookings)
    said.push(
      `${shortDay(on)}: ${className}, ${status === 'waiting' ? 'waiting' : 'booked'}, ${verdictWords[verdict].toLowerCase()}.`,
    );
  return said;
}

export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

const letter = 7.1;

/** About how wide a short text is at the tape's size, in pixels. */
export const widthOf = (text: string) => text.length * letter;

/** The name, its first word, or nothing: whatever has room. */
export const fitted = (name: string, room: number) =>
  [name, name.split(' ')[0] ?? ''].find((text) => widthOf(text) + 12 <= room) ?? '';
