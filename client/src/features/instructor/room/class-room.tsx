import { useState } from 'react';
import { useMe } from '@/api/session';
import type { Person, Roster } from '@/api/types';
import { NotesAfter } from '@/components/notes/notes-after';
import { begin, elapsed, goTo } from './clock';
import { useClassKeys } from './keys';
import { LostLine } from './lost-line';
import { MovementNow } from './movement-now';
import { RoomDialogs, type Dialog } from './room-dialogs';
import { RoomFoot, RoomHead } from './room-frame';
import { stepFrom, stopAt, stopsOf, type Stop } from './steps';
import { useNow } from './use-now';
import { WhoDoesWhat } from './who-does';
import classes from './room.module.css';

interface Props {
  roster: Roster;
  /** When the server last gave the roster, as the device's clock tells it. */
  asOf: number;
  asked: Stop | undefined;
  onShow: (stop: Stop) => void;
  onLeave: () => void;
}

/** One movement at a time, with those who do something else; then the notes. */
export function ClassRoom({ roster, asOf, asked, onShow, onLeave }: Props) {
  const { today } = useMe();
  const { session, plan, people } = roster;
  const stops = stopsOf(plan);
  const at = stopAt(stops, asked);
  const now = useNow();
  const [spent, setSpent] = useState(() => begin(at, now));
  const [dialog, setDialog] = useState<Dialog | null>(null);

  const show = (stop: Stop) => {
    setSpent((before) => goTo(before, stop, now));
    onShow(stop);
  };
  const step = (by: 1 | -1) => show(stepFrom(stops, at, by));
  // Out of the dialog first, then out of the class.
  useClassKeys({
    onStep: step,
    onEscape: () => (dialog === null ? onLeave() : setDialog(null)),
  });

  const movement = plan.find(({ position }) => position === at);
  const look = ({ bookingId }: Person) => setDialog({ kind: 'person', bookingId });
  return (
    <div className={classes.room}>
      <RoomHead
        roster={roster}
        at={at}
        onOpen={setDialog}
        onNotes={() => show('notes')}
        onLeave={onLeave}
      />
      <LostLine asOf={asOf} zone={session.zone} />
      <main className={classes.middle} data-notes={at === 'notes' || undefined}>
        {at === 'notes' ? (
          <div className={classes.notes} role="region" aria-label="After class">
            <NotesAfter sessionId={session.id} people={people} early="write" />
          </div>
        ) : (
          <>
            <MovementNow
              movement={movement}
              next={plan.find(({ position }) => position === stepFrom(stops, at, 1))}
              spent={elapsed(spent, now)}
            />
            <WhoDoesWhat people={people} position={movement?.position ?? null} onLook={look} />
          </>
        )}
      </main>
      <RoomFoot roster={roster} stops={stops} at={at} onStep={step} />
      <RoomDialogs
        roster={roster}
        at={at}
        dialog={dialog}
        canCheckIn={session.on === today}
        onShow={show}
        onOpen={setDialog}
      />
    </div>
  );
}
