import { Button, Group, Text, Title } from '@mantine/core';
import { Go } from '@/components/states/go';
import { IconX } from '@tabler/icons-react';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { sessionsQueries } from '@/api/sessions';
import type { Person, SessionSummary } from '@/api/types';
import { CancelButton } from '@/components/booking/booking';
import { Door } from '@/components/check-in/door';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { SafetyNote } from '@/components/states/safety-note';
import { shortDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import { Needs } from '@/components/verdict/mark';
import classes from './desk.module.css';

const route = getRouteApi('/inside/desk');

/** Who is in, who is here, who waits: without a word of anybody's health. */
export function RosterPanel({ sessionId, today }: { sessionId: number; today: string }) {
  const roster = useQuery(sessionsQueries.roster(sessionId));
  const navigate = route.useNavigate();
  return (
    <section className={classes.panel} aria-label="Roster">
      <Group justify="flex-end" mb={-28}>
        <Button
          size="xs"
          variant="subtle"
          color="gray"
          leftSection={<IconX size={16} aria-hidden />}
          onClick={() => void navigate({ search: ({ day }) => ({ day }), resetScroll: false })}
        >
          Close
        </Button>
      </Group>
      <Asked query={roster} waiting={<Lines count={7} />}>
        {({ session, people, waiting }) => (
          <>
            <Title order={2} pr={80}>
              {session.className}
            </Title>
            <Text>
              {shortDay(session.on)}, <SessionTime session={session} />, {session.roomName}
            </Text>
            <Text mb="sm">
              {session.instructorName ?? <Needs tone="stop">No instructor</Needs>} ·{' '}
              {session.checkedIn} of {session.seatsTaken} here
            </Text>
            {people.length === 0 ? (
              <Empty title="Nobody booked yet">
                Find a client above; her card says whether this session suits her.
              </Empty>
            ) : (
              <ul className={classes.list}>
                {people.map((person) => (
                  <Booked
                    key={person.bookingId}
                    person={person}
                    session={session}
                    canCheckIn={session.on === today}
                  />
                ))}
              </ul>
            )}
            {waiting.length > 0 && <Line people={waiting} session={session} />}
            <SafetyNote locationId={session.locationId} />
          </>
        )}
      </Asked>
    </section>
  );
}

interface BookedProps {
  person: Person;
  session: SessionSummary;
  canCheckIn: boolean;
}

function Booked({ person, session, canCheckIn }: BookedProps) {
  return (
    <li className={classes.person}>
      <Who person={person} />
      {canCheckIn || person.checkedInAt != null ? (
        <Door
          person={person}
          sessionId={session.id}
          canCheckIn={canCheckIn}
          notWell="Not well"
          size="xs"
        />
      ) : (
        <span />
      )}
      <CancelButton
        bookingId={person.bookingId}
        clientId={person.clientId}
        session={session}
        waiting={false}
        who={person.name}
      />
      <Administrative person={person} />
    </li>
  );
}

function Line({ people, session }: { people: readonly Person[]; session: SessionSummary }) {
  return (
    <>
      <Title order={3} mt="lg" mb="xs">
        Waiting, in order
      </Title>
      <ol className={classes.list}>
        {people.map((person, index) => (
          <li key={person.bookingId} className={classes.person}>
            <Who person={person} place={person.place ?? index + 1} />
            <span />
            <CancelButton
              bookingId={person.bookingId}
              clientId={person.clientId}
              session={session}
              waiting
              who={person.name}
            />
            <Administrative person={person} />
          </li>
        ))}
      </ol>
    </>
  );
}

function Who({ person, place }: { person: Person; place?: number }) {
  return (
    <div>
      {place !== undefined && <span className={classes.place}>{place}</span>}
      <Go
        to="/desk/clients/$clientId"
        params={{ clientId: String(person.clientId) }}
        fw={600}
        c="inherit"
      >
        {person.name}
      </Go>
    </div>
  );
}

/** The reason a desk may know, across the whole row. */
function Administrative({ person }: { person: Person }) {
  if (person.administrative == null) return null;
  const pressing = person.verdict === 'needsClearance' || person.verdict === 'notSuitable';
  return (
    <div className={classes.administrative}>
      {pressing ? <Needs tone="mind">{person.administrative}</Needs> : person.administrative}
    </div>
  );
}
