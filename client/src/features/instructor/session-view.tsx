import { Button, Group, SegmentedControl, Text, Title } from '@mantine/core';
import { IconPrinter } from '@tabler/icons-react';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCheckIn } from '@/api/bookings';
import { sessionsQueries } from '@/api/sessions';
import { useMe } from '@/api/session';
import type { Roster } from '@/api/types';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import { tellRefused } from '@/components/states/told';
import { longDay, nearDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import { Floor } from './floor/floor';
import { NewFlags } from './new-flags';
import { PersonDetails } from './person-details';
import { PlanNow } from './plan/plan-now';
import { PlanPanel } from './plan/plan-panel';
import { PrintSheet } from './print-sheet';
import classes from './teach.module.css';

type Pressing = 'look' | 'check-in';

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
  const { session, people, waiting, plan } = roster;
  const [selected, setSelected] = useState<number | null>(null);
  const [movement, setMovement] = useState<number | null>(null);
  const [pressing, setPressing] = useState<Pressing>('look');
  const checkIn = useCheckIn(session.id);
  const her = people.find(({ bookingId }) => bookingId === selected);
  const planned = plan.length > 0;
  const choice = { plan, people, chosen: movement, onChoose: setMovement };
  const isToday = session.on === today;

  return (
    <article aria-labelledby="session">
      <div className={classes.screen}>
        <Group justify="space-between" align="flex-start" mb="md">
          <div>
            <Title id="session">{session.className}</Title>
            <Text size="lg">
              {isToday ? 'Today' : longDay(session.on)}
              {nearDay(session.on, today) === 'tomorrow' && ' (tomorrow)'},{' '}
              <SessionTime session={session} />
            </Text>
            <Text c="dimmed">
              {session.roomName}, {session.locationName} · {people.length} of {session.seats} booked
              {waiting.length > 0 && `, ${waiting.length} waiting`} · {session.checkedIn} here
            </Text>
          </div>
          <Group gap="xs">
            {isToday && people.length > 0 && (
              <SegmentedControl
                aria-label="Pressing a mat"
                value={pressing}
                onChange={setPressing}
                data={[
                  { value: 'look', label: 'Look' },
                  { value: 'check-in', label: 'Check in' },
                ]}
              />
            )}
            <Go
              to="/teach/plans/$classId"
              params={{ classId: String(session.classId) }}
              search={{ session: session.id }}
            >
              Change the plan for this session
            </Go>
            <Button
              variant="default"
              leftSection={<IconPrinter size={18} aria-hidden />}
              onClick={() => window.print()}
            >
              Print
            </Button>
          </Group>
        </Group>
        <NewFlags sessionId={session.id} people={people} />
        {people.length === 0 ? (
          <Empty title="Nobody is booked yet">The floor fills as bookings come in.</Empty>
        ) : (
          <div className={classes.split}>
            <Floor
              people={people}
              seats={session.seats}
              selected={selected}
              movement={movement}
              pressing={pressing}
              onPress={(person) => {
                setSelected(person.bookingId);
                if (pressing === 'check-in')
                  checkIn.mutate(
                    { bookingId: person.bookingId, here: person.checkedInAt == null },
                    { onError: tellRefused },
                  );
              }}
            />
            <div className={classes.side}>
              {planned && <PlanNow {...choice} />}
              <PersonDetails
                key={selected}
                person={her}
                session={session}
                canCheckIn={isToday}
                onClose={() => setSelected(null)}
              />
              {planned && <PlanPanel {...choice} />}
            </div>
          </div>
        )}
        <SafetyNote locationId={session.locationId} />
      </div>
      <PrintSheet roster={roster} />
    </article>
  );
}
