import { useCallback, useEffect, useRef, type KeyboardEvent, type PointerEvent } from 'react';
import type { DraftSession, TimetableConflict } from '@/api/types';
import { addDays, shortDay } from '@/components/time/days';
import { BoardCard } from './board-card';
import { leastHeight, lineHeight, Lines, pixelsPerHour } from './board-lines';
import {
  isOn,
  lasting,
  lengthStep,
  minutesOf,
  onDay,
  onLine,
  pressed,
  sideBySide,
  spotOf,
  startingAt,
  step,
  type Ground,
  type Spot,
} from './place';
import type { Holding } from './use-held';
import type { Named } from './words';
import classes from './board.module.css';

interface Props {
  monday: string;
  today: string;
  sessions: readonly DraftSession[];
  conflicts: ReadonlyMap<number, TimetableConflict[]>;
  ground: Ground;
  hours: { from: number; to: number };
  holding: Holding;
  named: Named;
  open: (session: DraftSession) => void;
  add: (spot: Pick<Spot, 'on' | 'startsLocal'>, line: Ground['lines'][number]) => void;
}

/** Less than this, and a press is a press, not the start of a move. */
const slack = 4;

/** A card is never lower than three lines of writing, whatever its session's length. */
const leastMinutes = (leastHeight / pixelsPerHour) * 60;

/**
 * A week: lines down, days across, each day with its hours from top to bottom. A session is moved with the pointer, or
 * taken in hand with the space bar and moved with the arrow keys; either way what stands against it is told on the way.
 */
export function Board(props: Props) {
  const { monday, sessions, conflicts, ground, hours, holding, named, open } = props;
  const { held } = holding;
  const field = useRef<HTMLDivElement>(null);
  const grip = useRef<Grip | null>(null);
  const days = Array.from({ length: 7 }, (_, day) => addDays(monday, day));
  const tall = lineHeight(hours);

  const shown = sessions
    .map((session) => ({
      session,
      spot: held?.session.id === session.id ? held.at : spotOf(session),
    }))
    .filter(({ spot }) => days.includes(spot.on))
    .flatMap((each) => {
      const line = ground.lines.findIndex((one) => isOn(ground.view, one, each.spot));
      return line === -1 ? [] : [{ ...each, line, day: days.indexOf(each.spot.on) }];
    });
  const lanes = new Map(
    ground.lines.flatMap((_, line) =>
      days.flatMap((_, day) => [
        ...sideBySide(
          shown
            .filter((each) => each.line === line && each.day === day)
            .map(({ session, spot }) => ({ ...spot, id: session.id })),
          leastMinutes,
        ),
      ]),
    ),
  );
  const inOrder = [...shown].sort(
    (a, b) =>
      a.line - b.line || a.day - b.day || a.spot.startsLocal.localeCompare(b.spot.startsLocal),
  );

  const spotUnder = (event: PointerEvent, { session, grabbed, sizes }: Grip): Spot => {
    const from = spotOf(session);
    if (field.current === null) return from;
    const { left, top, width } = field.current.getBoundingClientRect();
    const down = event.clientY - top;
    if (sizes) {
      const line = ground.lines.findIndex((one) => isOn(ground.view, one, from));
      const end = hours.from + ((down - line * tall) / pixelsPerHour) * 60;
      return lasting(
        from,
        Math.round((end - minutesOf(from.startsLocal)) / lengthStep) * lengthStep,
      );
    }
    const day = Math.min(Math.max(Math.floor(((event.clientX - left) / width) * 7), 0), 6);
    const at = Math.min(Math.max(Math.floor(down / tall), 0), ground.lines.length - 1);
    const start = hours.from + ((down - at * tall - grabbed) / pixelsPerHour) * 60;
    const line = ground.lines[at];
    const placed = onDay(
      startingAt(from, Math.round(start / step) * step),
      addDays(monday, day),
      ground.first,
      ground.last,
    );
    return line === undefined ? placed : onLine(ground.view, line, placed);
  };

  const grab = (event: PointerEvent<HTMLElement>, session: DraftSession, sizes: boolean) => {
    if (event.button !== 0 || !session.isHeld) return;
    const card = event.currentTarget.closest('[data-card]')?.getBoundingClientRect();
    grip.current = {
      session,
      sizes,
      x: event.clientX,
      y: event.clientY,
      grabbed: event.clientY - (card?.top ?? event.clientY),
      moving: false,
      givenUp: false,
    };
    event.currentTarget.setPointerCapture(event.pointerId);
    if (sizes) event.stopPropagation();
  };
  const follow = (event: PointerEvent<HTMLElement>) => {
    const now = grip.current;
    if (now === null || now.givenUp) return;
    if (!now.moving) {
      if (Math.hypot(event.clientX - now.x, event.clientY - now.y) < slack) return;
      now.moving = true;
      holding.take(now.session, 'pointer', spotUnder(event, now));
    } else holding.move(spotUnder(event, now));
    push(event);
  };
  const letGo = () => {
    const now = grip.current;
    grip.current = null;
    if (now?.moving === true && !now.givenUp) holding.putDown();
    return now?.moving === true;
  };
  const drop = () => {
    grip.current = null;
    holding.takeBack();
  };
  const { takeBack } = holding;
  // The button is still down: that it goes up later is no press, which would open the session over the board.
  const giveUp = useCallback(() => {
    if (grip.current !== null) grip.current.givenUp = true;
    takeBack();
  }, [takeBack]);

  const byPointer = held?.by === 'pointer';
  useEffect(() => {
    if (!byPointer) return;
    const escape = (event: globalThis.KeyboardEvent) => {
      if (event.key === 'Escape') giveUp();
    };
    window.addEventListener('keydown', escape);
    return () => window.removeEventListener('keydown', escape);
  }, [byPointer, giveUp]);

  const walk = (id: number, by: number) => {
    const at = inOrder.findIndex(({ session }) => session.id === id);
    const next = inOrder[Math.min(Math.max(at + by, 0), inOrder.length - 1)];
    if (next !== undefined)
      field.current?.querySelector<HTMLElement>(`[data-card="${next.session.id}"]`)?.focus();
  };

  const key = (event: KeyboardEvent<HTMLElement>, session: DraftSession) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (held?.session.id !== session.id) {
      if (event.key === ' ' && session.isHeld) holding.take(session, 'keys');
      else if (event.key === 'ArrowDown' || event.key === 'ArrowRight') walk(session.id, 1);
      else if (event.key === 'ArrowUp' || event.key === 'ArrowLeft') walk(session.id, -1);
      else if (event.key === 'Home') walk(session.id, -inOrder.length);
      else if (event.key === 'End') walk(session.id, inOrder.length);
      else return;
      event.preventDefault();
      return;
    }
    if (event.key === 'Escape') giveUp();
    else if (event.key === 'Enter' || event.key === ' ') holding.putDown();
    else {
      const next = pressed(held.at, event, ground);
      if (next === null) return;
      holding.move(next);
    }
    event.preventDefault();
    event.stopPropagation();
  };

  const first = inOrder[0]?.session.id;
  return (
    <div className={classes.scroll} data-board>
      <div
        className={classes.board}
        role="application"
        aria-label={`The week by ${ground.view}. Arrow keys go from session to session, the space bar takes one in hand.`}
      >
        <div className={classes.head}>
          <span />
          {days.map((day) => (
            <span
              key={day}
              className={classes.day}
              data-today={day === props.today || undefined}
              data-outside={day < ground.first || day > ground.last || undefined}
            >
              {shortDay(day)}
              {day === props.today && ' today'}
            </span>
          ))}
        </div>
        <div className={classes.body}>
          <Lines lines={ground.lines} hours={hours} days={days} ground={ground} add={props.add} />
          <div ref={field} className={classes.field} style={{ height: tall * ground.lines.length }}>
            {inOrder.map(({ session, spot, line, day }) => {
              const lane = lanes.get(session.id) ?? { at: 0, of: 1 };
              const mine = held?.session.id === session.id;
              return (
                <BoardCard
                  key={session.id}
                  session={session}
                  spot={spot}
                  view={ground.view}
                  named={named}
                  held={mine}
                  isFirst={session.id === first}
                  conflicts={mine ? holding.conflicts : conflicts.get(session.key)}
                  style={{
                    top:
                      line * tall +
                      ((minutesOf(spot.startsLocal) - hours.from) / 60) * pixelsPerHour,
                    height: Math.max((spot.minutes / 60) * pixelsPerHour, leastHeight),
                    left: `calc(${(100 / 7) * (day + lane.at / lane.of)}% + 2px)`,
                    width: `calc(${100 / 7 / lane.of}% - 4px)`,
                  }}
                  onKeyDown={(event) => key(event, session)}
                  onPointerDown={(event, sizes) => grab(event, session, sizes)}
                  onPointerMove={follow}
                  onPointerUp={letGo}
                  onPointerCancel={drop}
                  onOpen={() => open(session)}
                />
              );
            })}
          </div>
        </div>
      </div>
    </div>
  );
}

interface Grip {
  session: DraftSession;
  /** The lower edge is held: the length changes. */
  sizes: boolean;
  x: number;
  y: number;
  /** Pixels from the card's upper edge to where it was taken. */
  grabbed: number;
  moving: boolean;
  /** Taken back with Escape while the button is down. */
  givenUp: boolean;
}

/** Near the edge of what is seen, the board moves on. */
function push(event: PointerEvent<HTMLElement>) {
  const seen = event.currentTarget.closest<HTMLElement>('[data-board]');
  if (seen === null) return;
  const { top, bottom, left, right } = seen.getBoundingClientRect();
  const edge = 28;
  const by = (low: number, high: number, at: number) =>
    at < low + edge ? -12 : at > high - edge ? 12 : 0;
  seen.scrollBy(by(left, right, event.clientX), by(top + 36, bottom, event.clientY));
}
