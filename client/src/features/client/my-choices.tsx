import { Button, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { clientQueries } from '@/api/clients';
import type { Choice } from '@/api/types';
import { useBooking } from '@/components/booking/booking';
import { byDay, open } from '@/components/booking/choices';
import { RefusedList } from '@/components/booking/refused-list';
import { Asked, Empty } from '@/components/states/asked';
import { longDay, shortDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import { FitLine } from '@/components/booking/fit-line';
import { WhatChanges } from './what-changes';
import classes from './my.module.css';

const daysAtFirst = 7;

export function MyChoices({ clientId }: { clientId: number }) {
  const choices = useQuery(clientQueries.choices(clientId));
  const [all, setAll] = useState(false);
  const { book, busyWith } = useBooking(clientId);
  return (
    <section aria-labelledby="suits">
      <Title order={2} id="suits">
        Classes that suit you
      </Title>
      <Text c="dimmed">Each is matched to where you will be on its day, for four weeks ahead.</Text>
      <Asked query={choices}>
        {(list) => {
          const days = byDay(open(list));
          const shown = all ? days : days.slice(0, daysAtFirst);
          return (
            <>
              {days.length === 0 && (
                <Empty title="Nothing to book just now">
                  The line below says what would change that.
                </Empty>
              )}
              {shown.map(([day, ofDay]) => (
                <section key={day} aria-label={longDay(day)}>
                  <Title order={3} className={classes.day}>
                    {longDay(day)}
                  </Title>
                  <ul className={classes.list}>
                    {[...ofDay].sort(byTime).map((choice) => (
                      <OneChoice
                        key={choice.session.id}
                        clientId={clientId}
                        choice={choice}
                        busy={busyWith === choice.session.id}
                        onBook={() => book(choice.session)}
                      />
                    ))}
                  </ul>
                </section>
              ))}
              {days.length > shown.length && (
                <Button variant="default" fullWidth mt="md" onClick={() => setAll(true)}>
                  Show the other {days.length - shown.length} days
                </Button>
              )}
              <RefusedList
                choices={list}
                title={(count) =>
                  count === 1
                    ? '1 class you cannot book now, and what would change it'
                    : `${count} classes you cannot book now, and what would change it`
                }
              />
            </>
          );
        }}
      </Asked>
    </section>
  );
}

const byTime = (a: Choice, b: Choice) => a.session.startsAt.localeCompare(b.session.startsAt);

interface OneProps {
  clientId: number;
  choice: Choice;
  busy: boolean;
  onBook: () => void;
}

function OneChoice({ clientId, choice: { session, fit, canBook }, busy, onBook }: OneProps) {
  const does = canBook === 'seat' ? 'Book' : 'Join waitlist';
  const which = `${session.className}, ${shortDay(session.on)} ${session.startsLocal}`;
  return (
    <li className={classes.choice}>
      <div>
        <Text fw={600}>
          <SessionTime session={session} from /> {session.className}
        </Text>
        <FitLine fit={fit} short={(fit.plan?.changed ?? 0) > 0} />
        <Text size="sm" c="dimmed">
          {session.locationName}
          {session.instructorName != null && ` · ${session.instructorName}`}
          {canBook === 'waitlist' && ` · full, ${session.waiting} waiting`}
        </Text>
      </div>
      <Button
        className={classes.book}
        variant={canBook === 'seat' ? 'filled' : 'default'}
        loading={busy}
        onClick={onBook}
        aria-label={`${does}: ${which}`}
      >
        {does}
      </Button>
      <div className={classes.options}>
        <WhatChanges clientId={clientId} sessionId={session.id} plan={fit.plan} of={which} />
      </div>
    </li>
  );
}
