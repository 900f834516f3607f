import { Button, Group, Text, Title } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { useQuery } from '@tanstack/react-query';
import { useBook } from '@/api/bookings';
import { letGoQueries, useSeenTo } from '@/api/series';
import type { LetGo } from '@/api/types';
import { FitLine } from '@/components/booking/fit-line';
import { Asked, Empty, Lines, Refused } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import { longDay, shortDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import classes from './desk.module.css';

/** People whose seat a change of the timetable let go, until somebody has seen to them. */
export function LetGoPage() {
  const list = useQuery(letGoQueries.list());
  return (
    <>
      <Title>To rebook</Title>
      <Text c="dimmed" mb="lg" maw="46rem">
        Their class was called off, or moved onto another of theirs. They were told and paid
        nothing; these sessions suit them on their dates and have a seat.
      </Text>
      <Asked query={list} waiting={<Lines count={3} height={150} />}>
        {(people) =>
          people.length === 0 ? (
            <Empty title="Nobody to rebook">
              Whoever loses a seat because the timetable changed stands here until she is seen to.
            </Empty>
          ) : (
            <>
              <ul className={classes.list}>
                {people.map((one) => (
                  <One key={one.bookingId} one={one} />
                ))}
              </ul>
              <SafetyNote />
            </>
          )
        }
      </Asked>
    </>
  );
}

function One({ one }: { one: LetGo }) {
  const book = useBook();
  const seen = useSeenTo();
  const busy = book.isPending || seen.isPending;
  return (
    <li className={classes.move}>
      <div>
        <Title order={2}>
          <Go
            to="/desk/clients/$clientId"
            params={{ clientId: String(one.clientId) }}
            c="inherit"
            inherit
          >
            {one.name}
          </Go>
        </Title>
        <Text>{one.phone}</Text>
        <Text mt="xs">
          {one.session.className}, {longDay(one.session.on)}{' '}
          <SessionTime session={one.session} from />
        </Text>
        <Text c="dimmed">
          {one.why === 'overlap'
            ? 'It was moved onto another class of hers.'
            : one.session.status === 'open'
              ? 'It was called off and is held again.'
              : 'It was called off.'}
        </Text>
      </div>
      <div>
        {one.choices.length === 0 ? (
          <Text>No session about that day suits her and has a seat.</Text>
        ) : (
          <ul className={classes.list}>
            {one.choices.map(({ session, fit }) => (
              <li key={session.id} className={classes.instead}>
                <div>
                  <Text fw={600}>
                    {session.className}, {shortDay(session.on)}{' '}
                    <SessionTime session={session} from />
                  </Text>
                  <Text size="sm" c="dimmed">
                    {session.locationName}, {session.instructorName ?? 'nobody teaches it yet'}
                  </Text>
                  <FitLine fit={fit} short />
                </div>
                <Button
                  size="sm"
                  disabled={busy}
                  loading={book.isPending && book.variables.sessionId === session.id}
                  aria-label={`Book ${one.name} into ${session.className} on ${longDay(session.on)} at ${session.startsLocal}`}
                  onClick={() =>
                    book.mutate(
                      { sessionId: session.id, clientId: one.clientId },
                      {
                        onSuccess: () =>
                          seen.mutate(one.bookingId, {
                            onSuccess: () =>
                              notifications.show({
                                message: `${one.name} is booked on ${longDay(session.on)} at ${session.startsLocal}.`,
                              }),
                          }),
                      },
                    )
                  }
                >
                  Book
                </Button>
              </li>
            ))}
          </ul>
        )}
        <Refused error={book.error ?? seen.error} />
        <Group mt="md">
          <Button
            variant="default"
            disabled={busy}
            aria-label={`${one.name} is seen to`}
            onClick={() => seen.mutate(one.bookingId)}
          >
            Seen to
          </Button>
        </Group>
      </div>
    </li>
  );
}
