import type { SessionSummary } from '@/api/types';
import classes from './desk.module.css';

/** Seats as small mats: here, booked, free. The figures stand beside it. */
export function Seats({ session }: { session: SessionSummary }) {
  const state = (seat: number) =>
    seat < session.checkedIn ? 'here' : seat < session.seatsTaken ? 'booked' : 'free';
  return (
    <div className={classes.seats} aria-hidden="true">
      {Array.from({ length: session.seats }, (_, seat) => (
        <span key={seat} data-seat={state(seat)} />
      ))}
    </div>
  );
}
