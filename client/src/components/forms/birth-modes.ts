import type { BirthMode, BroughtBack, Released } from '@/api/types';

export const birthModes: readonly { value: BirthMode; label: string }[] = [
  { value: 'vaginal', label: 'Vaginal' },
  { value: 'assisted', label: 'Assisted (forceps or suction)' },
  { value: 'caesarean', label: 'Caesarean' },
  { value: 'unknown', label: 'Rather not say, or not known' },
];

const bookings = (count: number) => (count === 1 ? '1 booking' : `${count} bookings`);

/** What was done with her bookings, in plain words; the same for every birth. */
export const releasedWords = ({ bookingsReleased }: Pick<Released, 'bookingsReleased'>) =>
  bookingsReleased === 0
    ? 'Noted.'
    : `Noted. ${bookings(bookingsReleased)} released; nothing is owed.`;

/** What became of bookings that were let go and asked for again. */
export function broughtBackWords({ booked, waiting, gone }: BroughtBack): string {
  const parts = [
    booked > 0 && `${bookings(booked)} back in place`,
    waiting > 0 && `${waiting} on a waitlist now`,
    gone > 0 && `${gone} could not be had back`,
  ].filter((part) => part !== false);
  return parts.length === 0 ? 'Taken back.' : `Taken back: ${parts.join(', ')}.`;
}
