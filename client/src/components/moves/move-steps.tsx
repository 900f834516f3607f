import { useAcceptMove } from '@/api/moves';
import type { Move, SessionSummary } from '@/api/types';
import { tell } from '@/components/states/told';
import { shortDay } from '@/components/time/days';
import { Needs, VerdictMark } from '@/components/verdict/mark';
import classes from './moves.module.css';

/** Her bookings behind the line, and what takes the place of each. */
export function MoveSteps({ move }: { move: Move }) {
  return (
    <ul className={classes.steps}>
      {move.steps.map(({ bookingId, from, to, fit }) => (
        <li key={bookingId}>
          <del>{place(from)}</del>{' '}
          {to == null || fit == null ? (
            <span>
              <Needs tone="mind">nothing found; the booking stays, marked</Needs>
            </span>
          ) : (
            <span>
              → <strong>{place(to)}</strong>{' '}
              <VerdictMark verdict={fit.verdict}>{fit.label}</VerdictMark>
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}

/** Accepts a suggestion and says so, though the suggestion is off the list before its answer is told. */
export function useMoving(words: (moved: string) => string) {
  const accept = useAcceptMove();
  return {
    isPending: accept.isPending,
    error: accept.error,
    run: (move: Move) =>
      void accept.mutateAsync(move.id).then(
        ({ moved }) => tell(words(moved === 1 ? '1 booking' : `${moved} bookings`)),
        // A refusal stands beside the suggestion.
        () => undefined,
      ),
  };
}

const place = ({ on, startsLocal, className }: SessionSummary) =>
  `${shortDay(on)} ${startsLocal} ${className}`;
