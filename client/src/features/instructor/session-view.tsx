import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCheckIn } from '@/api/bookings';
import { sessionsQueries } from '@/api/sessions';
import { useMe } from '@/api/session';
import type { Person, Roster } from '@/api/types';
import { NotesAfter } from '@/components/notes/notes-after';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { SafetyNote } from '@/components/states/safety-note';
import { tellRefused } from '@/components/states/told';
import { Floor } from './floor/floor';
import { NewFlags } from './new-flags';
import { PersonDetails } from './person-details';
import { ClassTable } from './plan/class-table';
import { PlanNow } from './plan/plan-now';
import { PlanPanel } from './plan/plan-panel';
import { PrintPlan } from './plan/print-plan';
import { PrintSheet } from './print-sheet';
import { usePrinting } from './printing';
import { SessionHead, type Pressing, type Shown } from './session-head';
import classes from './teach.module.css';

export function SessionView({ sessionId }: { sessionId: number }) {
  const roster = useQuery(sessionsQueries.roster(sessionId));
  return (
    <Asked query={roster} waiting={<Lines count={3} height={160} />}>
      {(data) => <RosterView key={sessionId} roster={data} />}
    </Asked>
  );
}

function RosterView({ roster }: { roster: Roster }) {
  const { today } = useMe();
  const { session, people, plan } = roster;
  const [selected, setSelected] = useState<number | null>(null);
  const [movement, setMovement] = useState<number | null>(null);
  const [pressing, setPressing] = useState<Pressing>('look');
  const [shown, setShown] = useState<Shown>('floor');
  const { sheet, print } = usePrinting();
  const checkIn = useCheckIn(session.id);
  const her = people.find(({ bookingId }) => bookingId === selected);
  const planned = plan.length > 0;
  const choice = { plan, people, chosen: movement, onChoose: setMovement };
  const isToday = session.on === today;
  const look = ({ bookingId }: Person) => setSelected(bookingId);
  const details = (
    <PersonDetails
      key={selected}
      person={her}
      session={session}
      canCheckIn={isToday}
      onClose={() => setSelected(null)}
    />
  );

  return (
    <article aria-labelledby="session">
      <div className={classes.screen}>
        <SessionHead
          roster={roster}
          pressing={pressing}
          onPressing={setPressing}
          shown={shown}
          onShown={setShown}
          onPrint={print}
        />
        <NewFlags sessionId={session.id} people={people} />
        {people.length === 0 ? (
          <Empty title="Nobody is booked yet">The floor fills as bookings come in.</Empty>
        ) : planned && shown === 'table' ? (
          <>
            <ClassTable {...choice} onLook={look} />
            {her !== undefined && <div className={classes.under}>{details}</div>}
          </>
        ) : (
          <div className={classes.split}>
            <Floor
              people={people}
              seats={session.seats}
              selected={selected}
              movement={movement}
              pressing={pressing}
              onPress={(person) => {
                look(person);
                if (pressing === 'check-in')
                  checkIn.mutate(
                    {
                      bookingId: person.bookingId,
                      answer: person.checkedInAt == null ? 'allWell' : null,
                    },
                    { onError: tellRefused },
                  );
              }}
            />
            <div className={classes.side}>
              {planned && <PlanNow {...choice} />}
              {details}
              {planned && <PlanPanel {...choice} />}
            </div>
          </div>
        )}
        {people.length > 0 && (
          <div className={classes.after}>
            <NotesAfter sessionId={session.id} people={people} early="hide" />
          </div>
        )}
        <SafetyNote locationId={session.locationId} />
      </div>
      {sheet !== 'plan' && <PrintSheet roster={roster} />}
      {sheet !== 'roster' && <PrintPlan roster={roster} />}
    </article>
  );
}
