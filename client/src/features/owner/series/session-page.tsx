import { Button, Checkbox, Group, Stack, Text, Title } from '@mantine/core';
import { notifications } from '@mantine/notifications';
import { queryOptions, useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { api, ok } from '@/api/client';
import { Problem } from '@/api/problem';
import { useChangeSession } from '@/api/series';
import { sessionsQueries } from '@/api/sessions';
import { staffQueries } from '@/api/staff';
import type { SessionRequest, SessionSummary } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { Asked, Lines, Refused } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { longDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import { Needs } from '@/components/verdict/mark';
import { Consequences, isRefused, needsWord } from './consequences';
import { PlaceFields, type PlaceDraft } from './place-fields';
import classes from './series.module.css';

const route = getRouteApi('/inside/studio/sessions/$sessionId');

const sessionQuery = (id: number) =>
  queryOptions({
    queryKey: [...sessionsQueries.all(), id, 'one'] as const,
    queryFn: () =>
      ok(api.GET('/api/sessions/{sessionId}', { params: { path: { sessionId: id } } })),
  });

/** One session, changed by hand: what it would do comes first. */
export function SessionPage() {
  const { sessionId } = route.useParams();
  const session = useQuery(sessionQuery(Number(sessionId)));
  return (
    <Asked query={session} waiting={<Lines count={6} />}>
      {(one) => <One key={`${one.id} ${one.startsAt} ${one.status}`} session={one} />}
    </Asked>
  );
}

function One({ session }: { session: SessionSummary }) {
  const [on, setOn] = useState<string | null>(session.on);
  const [isHeld, setIsHeld] = useState(session.status === 'open');
  const [anyway, setAnyway] = useState(false);
  const [place, setPlace] = useState<PlaceDraft>({
    startsLocal: session.startsLocal,
    minutes: session.minutes,
    roomId: session.roomId,
    instructorId: session.instructorId ?? null,
    seats: session.seats,
  });
  const locations = useQuery(catalogueQueries.locations());
  const staff = useQuery(staffQueries.instructors());
  const look = useChangeSession(session.id);
  const keep = useChangeSession(session.id);
  const touched =
    <T,>(set: (value: T) => void) =>
    (value: T) => {
      look.reset();
      keep.reset();
      set(value);
    };
  const body = (): SessionRequest | null =>
    on === null || place.roomId === null
      ? null
      : {
          on,
          startsLocal: place.startsLocal,
          minutes: place.minutes,
          roomId: place.roomId,
          instructorId: place.instructorId,
          seats: place.seats,
          isHeld,
          anyway,
        };
  const problem = look.error ?? keep.error;
  const fields = problem instanceof Problem ? problem.fields : {};
  const seen = look.data;
  return (
    <>
      <Go to="/studio" search={{ week: session.on }}>
        The week
      </Go>
      <Title mt="xs">{session.className}</Title>
      <Text size="lg">
        {longDay(session.on)} <SessionTime session={session} />, {session.roomName},{' '}
        {session.locationName}
      </Text>
      <Group mb="lg" gap="md">
        <Text c="dimmed">
          {session.seatsTaken} of {session.seats} seats taken
        </Text>
        {session.status === 'cancelled' && <Needs tone="mind">Called off</Needs>}
        <Go to="/desk" search={{ day: session.on, session: session.id }}>
          Who is in it
        </Go>
      </Group>
      <div className={classes.two}>
        <Stack>
          <DayInput
            label="Day"
            value={on}
            error={fields.on}
            clearable={false}
            onChange={touched(setOn)}
          />
          <Asked query={locations} waiting={<Lines count={2} />}>
            {(places) => (
              <Asked query={staff} waiting={<Lines count={1} />}>
                {(people) => (
                  <PlaceFields
                    place={place}
                    onChange={touched(setPlace)}
                    locations={places}
                    staff={people}
                    errors={fields}
                  />
                )}
              </Asked>
            )}
          </Asked>
          <Checkbox
            label="It is held"
            description="Not held, everybody booked is let go at no charge and told."
            checked={isHeld}
            onChange={(event) => touched(setIsHeld)(event.currentTarget.checked)}
          />
          <Refused error={problem} />
          <Group>
            <Button
              variant={seen === undefined ? 'filled' : 'default'}
              loading={look.isPending}
              disabled={body() === null}
              onClick={() => {
                const wanted = body();
                setAnyway(false);
                if (wanted) look.mutate({ dryRun: true, body: wanted });
              }}
            >
              See what it changes
            </Button>
          </Group>
        </Stack>
        {seen ? (
          <Stack>
            <Title order={2}>What it changes</Title>
            <Consequences changes={seen.changes} anyway={anyway} onAnyway={setAnyway} />
            <Group>
              <Button
                loading={keep.isPending}
                disabled={isRefused(seen.changes) || (needsWord(seen.changes) && !anyway)}
                onClick={() => {
                  const wanted = body();
                  if (wanted)
                    keep.mutate(
                      { dryRun: false, body: wanted },
                      {
                        onSuccess: () => {
                          look.reset();
                          notifications.show({
                            message: isHeld
                              ? `${session.className} is changed.`
                              : `${session.className} is called off.`,
                          });
                        },
                      },
                    );
                }}
              >
                Keep the change
              </Button>
            </Group>
          </Stack>
        ) : (
          <Text c="dimmed">
            Nothing is kept before you have seen what it means for those who booked.
          </Text>
        )}
      </div>
    </>
  );
}
