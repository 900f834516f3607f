import { Button, Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { clientQueries } from '@/api/clients';
import { feedQueries } from '@/api/feeds';
import type { ClientBooking } from '@/api/types';
import { CancelButton } from '@/components/booking/booking';
import { CalendarFile } from '@/components/calendar/calendar-file';
import { Asked, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { longDay, nearDay, shortDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import { FitLine } from '@/components/booking/fit-line';
import { capital } from '@/components/tape/words';
import { WhatChanges } from './what-changes';
import classes from './my.module.css';

const laterAtFirst = 3;

interface Props {
  clientId: number;
  today: string;
}

export function MyBookings({ clientId, today }: Props) {
  const bookings = useQuery(clientQueries.bookings(clientId));
  const [all, setAll] = useState(false);
  return (
    <section aria-labelledby="next-class">
      <Title order={2} id="next-class" mb="sm">
        Your next class
      </Title>
      <Asked query={bookings} waiting={<Lines count={1} height={110} />}>
        {([next, ...later]) =>
          next === undefined ? (
            <Text c="dimmed">Nothing booked. Below are the classes that suit you.</Text>
          ) : (
            <>
              <div className={classes.next}>
                <Text className={classes.when}>
                  {capital(near(next, today))}, <SessionTime session={next.session} from />
                </Text>
                <Facts booking={next} clientId={clientId} />
                <Group mt="xs">
                  <Cancel booking={next} clientId={clientId} />
                </Group>
              </div>
              {later.length > 0 && (
                <ul className={classes.list} aria-label="After that">
                  {(all ? later : later.slice(0, laterAtFirst)).map((booking) => (
                    <li key={booking.bookingId} className={classes.booking}>
                      <div>
                        <Text fw={600}>
                          {longDay(booking.session.on)},{' '}
                          <SessionTime session={booking.session} from />
                        </Text>
                        <Facts booking={booking} clientId={clientId} short />
                      </div>
                      <Cancel booking={booking} clientId={clientId} />
                    </li>
                  ))}
                </ul>
              )}
              {!all && later.length > laterAtFirst && (
                <Button variant="default" fullWidth mt="xs" onClick={() => setAll(true)}>
                  Show the other {later.length - laterAtFirst} you have booked
                </Button>
              )}
              <Text mt="sm">
                <Go to="/my/calendar">Put them in your calendar</Go>
              </Text>
            </>
          )
        }
      </Asked>
    </section>
  );
}

const near = ({ session }: ClientBooking, today: string) => {
  const word = nearDay(session.on, today);
  return word === 'today' || word === 'tomorrow' ? word : longDay(session.on);
};

interface FactsProps {
  booking: ClientBooking;
  clientId: number;
  /** Later ones are told shortly unless something is wrong with them. */
  short?: boolean;
}

function Facts({ booking, clientId, short = false }: FactsProps) {
  const { session, fit, status, place } = booking;
  const { data: feeds } = useQuery(feedQueries.list());
  const unfit = fit.verdict === 'needsClearance' || fit.verdict === 'notSuitable';
  return (
    <>
      <Text>
        {session.className}
        {session.instructorName != null && ` with ${session.instructorName}`}
      </Text>
      <Text size="sm" c="dimmed">
        {session.roomName}, {session.locationName}
        {fit.age != null && ` · ${fit.age} that day`}
      </Text>
      {status === 'waiting' && (
        <Text fw={600}>On the waiting list{place != null && `, place ${place}`}</Text>
      )}
      <FitLine
        fit={fit}
        pressing={unfit}
        short={!unfit && (short || (fit.plan?.changed ?? 0) > 0)}
      />
      <CalendarFile
        sessionId={session.id}
        of={`${session.className}, ${shortDay(session.on)} ${session.startsLocal}`}
        named={feeds?.some(({ reads, namesClass }) => reads === 'client' && namesClass)}
      />
      <WhatChanges
        clientId={clientId}
        sessionId={session.id}
        plan={fit.plan}
        of={`${session.className}, ${shortDay(session.on)} ${session.startsLocal}`}
      />
    </>
  );
}

function Cancel({ booking, clientId }: { booking: ClientBooking; clientId: number }) {
  return (
    <CancelButton
      bookingId={booking.bookingId}
      clientId={clientId}
      session={booking.session}
      waiting={booking.status === 'waiting'}
    />
  );
}
