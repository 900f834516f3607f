import type { CSSProperties, KeyboardEvent, PointerEvent } from 'react';
import { useRef } from 'react';
import type { DraftSession, TimetableConflict } from '@/api/types';
import { SeverityShape } from '@/components/verdict/shapes';
import { conflictWords } from './conflict-words';
import { endOf, type Spot, type View } from './place';
import type { Named } from './words';
import classes from './board.module.css';

interface Props {
  session: DraftSession;
  spot: Spot;
  view: View;
  named: Named;
  held: boolean;
  isFirst: boolean;
  conflicts?: readonly TimetableConflict[];
  style: CSSProperties;
  onKeyDown: (event: KeyboardEvent<HTMLElement>) => void;
  onPointerDown: (event: PointerEvent<HTMLElement>, sizes: boolean) => void;
  onPointerMove: (event: PointerEvent<HTMLElement>) => void;
  onPointerUp: () => boolean;
  onPointerCancel: () => void;
  onOpen: () => void;
}

/** A session on the board: its hour, class, the other half of where it is, and a word for what stands against it. */
export function BoardCard({ session, spot, view, named, conflicts = [], ...props }: Props) {
  const moved = useRef(false);
  const worst = conflicts.find(({ isHard }) => isHard) ?? conflicts[0];
  const other = view === 'room' ? named.who(spot) : named.room(spot);
  return (
    <button
      type="button"
      data-card={session.id}
      data-held={props.held || undefined}
      data-off={!spot.isHeld || undefined}
      data-new={session.sessionId == null || undefined}
      data-changed={(session.isChanged && session.sessionId != null) || undefined}
      data-against={worst === undefined ? undefined : worst.isHard ? 'hard' : 'soft'}
      className={classes.card}
      style={props.style}
      tabIndex={props.held || props.isFirst ? 0 : -1}
      title={`${named.session(spot)}${conflicts.map(({ words }) => `\n${words}`).join('')}`}
      aria-label={labelOf(session, spot, named, conflicts, props.held)}
      onKeyDown={props.onKeyDown}
      // The space bar takes in hand and puts down; it does not press.
      onKeyUp={(event) => {
        if (event.key === ' ') event.preventDefault();
      }}
      onPointerDown={(event) => {
        moved.current = false;
        props.onPointerDown(event, false);
      }}
      // What happens to the lower edge comes here too.
      onPointerMove={props.onPointerMove}
      onPointerUp={() => {
        moved.current = props.onPointerUp();
      }}
      onPointerCancel={props.onPointerCancel}
      onClick={() => {
        if (!moved.current && !props.held) props.onOpen();
        moved.current = false;
      }}
    >
      <span className={classes.first}>
        <b>{spot.startsLocal}</b>
        {worst === undefined ? (
          <span className={classes.mark}>
            {!spot.isHeld
              ? 'Called off'
              : session.sessionId == null
                ? 'New'
                : session.isChanged
                  ? 'Changed'
                  : `${session.seatsTaken}/${spot.seats}`}
          </span>
        ) : (
          <span className={classes.mark} data-tone={worst.isHard ? 'stop' : 'mind'}>
            <SeverityShape severity={worst.isHard ? 'urgent' : 'attention'} />
            {conflictWords[worst.kind]}
          </span>
        )}
      </span>
      <span className={classes.what}>{named.className(spot)}</span>
      <span className={classes.where}>{other}</span>
      {spot.isHeld && (
        <span
          className={classes.edge}
          data-edge
          onPointerDown={(event) => {
            moved.current = false;
            props.onPointerDown(event, true);
          }}
        />
      )}
    </button>
  );
}

const labelOf = (
  session: DraftSession,
  spot: Spot,
  named: Named,
  conflicts: readonly TimetableConflict[],
  held: boolean,
) =>
  [
    `${named.className(spot)}, ${named.day(spot)}, ${spot.startsLocal} to ${endOf(spot)}, ${named.room(spot)}, ${named.who(spot)}`,
    held && 'in hand',
    !spot.isHeld && 'called off',
    spot.isHeld && session.sessionId == null && 'new',
    spot.isHeld && session.sessionId != null && session.isChanged && 'changed',
    ...conflicts.map(({ words }) => words),
  ]
    .filter((part) => part !== false)
    .join('. ');
