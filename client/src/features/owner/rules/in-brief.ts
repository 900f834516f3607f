import type { ChangedBooking, Consequences } from '@/api/types';
import { movementWords } from '@/components/verdict/words';

/** What becomes of the bookings ahead, in a sentence or two. */
export const inBrief = ({ judged, stricter, milder, movementsOnly }: Consequences) => {
  const bookings = judged === 1 ? '1 booking' : `${judged} bookings`;
  if (stricter + milder + movementsOnly === 0) return `${bookings} ahead looked at: none changes.`;
  const parts = [
    stricter > 0 && `${stricter} more strictly judged`,
    milder > 0 && `${milder} less strictly`,
    movementsOnly > 0 && `${movementsOnly} with other movements only`,
  ].filter((part) => part !== false);
  return `${bookings} ahead looked at: ${parts.join(', ')}.`;
};

/** What becomes of one movement: by verdict, or by what stands on the mat where the verdict stays. */
export const becomes = ({
  name,
  from,
  to,
  before,
  after,
}: ChangedBooking['movements'][number]): string =>
  from === to
    ? `${name}: “${before}” becomes “${after}”`
    : `${name}: ${movementWords[from].toLowerCase()} becomes ${movementWords[to].toLowerCase()}${after === '' ? '' : `, ${after}`}`;
