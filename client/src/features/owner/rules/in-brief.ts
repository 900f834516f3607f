import type { Consequences } from '@/api/types';

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
