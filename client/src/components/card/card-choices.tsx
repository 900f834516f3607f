import { Button, Group, Kbd, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { clientQueries } from '@/api/clients';
import type { Choice } from '@/api/types';
import { useBooking } from '@/components/booking/booking';
import { open } from '@/components/booking/choices';
import { RefusedList } from '@/components/booking/refused-list';
import { useShortcut, useShortcutsOn } from '@/components/keyboard/shortcut';
import { Asked, Empty } from '@/components/states/asked';
import { shortDay } from '@/components/time/days';
import { SessionTime } from '@/components/time/session-time';
import { FitLine } from '@/components/booking/fit-line';
import classes from './card.module.css';

const shownAtFirst = 8;

/** Four weeks of sessions, the best for her first. `b` goes to the first; Enter books it. */
export function CardChoices({ clientId }: { clientId: number }) {
  const choices = useQuery(clientQueries.choices(clientId));
  const list = useRef<HTMLUListElement>(null);
  const [shortcuts] = useShortcutsOn();
  const buttons = () => [...(list.current?.querySelectorAll<HTMLElement>('[data-book]') ?? [])];

  useShortcut('b', () => buttons()[0]?.focus());

  const step = (event: React.KeyboardEvent) => {
    const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    const all = buttons();
    const here = all.indexOf(event.target as HTMLElement);
    if (by === 0 || here === -1) return;
    event.preventDefault();
    all[here + by]?.focus();
  };

  return (
    <section aria-labelledby="choices">
      <Group justify="space-between" align="baseline">
        <Title order={2} id="choices">
          What she may book
        </Title>
        {shortcuts && (
          <Text size="sm" c="dimmed">
            <Kbd>b</Kbd> then <Kbd>Enter</Kbd> books the first
          </Text>
        )}
      </Group>
      <Asked query={choices}>
        {(all) => (
          <>
            <Open ref={list} choices={open(all)} clientId={clientId} onKeyDown={step} />
            <RefusedList
              choices={all}
              title={(count) =>
                count === 1
                  ? '1 session she may not book, and why'
                  : `${count} sessions she may not book, and why`
              }
            />
          </>
        )}
      </Asked>
    </section>
  );
}

interface OpenProps {
  ref: React.Ref<HTMLUListElement>;
  choices: Choice[];
  clientId: number;
  onKeyDown: (event: React.KeyboardEvent) => void;
}

function Open({ ref, choices, clientId, onKeyDown }: OpenProps) {
  const [all, setAll] = useState(false);
  const { book, busyWith } = useBooking(clientId);
  if (choices.length === 0)
    return (
      <Empty title="Nothing she may book in the next four weeks">
        Below are the sessions and what would change each answer.
      </Empty>
    );
  const shown = all ? choices : choices.slice(0, shownAtFirst);
  return (
    <>
      <ul ref={ref} className={classes.list}>
        {shown.map(({ session, fit, canBook }, index) => (
          <li key={session.id} className={classes.choice} data-first={index === 0 || undefined}>
            <div className={classes.when}>
              {shortDay(session.on)}
              <strong>
                <SessionTime session={session} from />
              </strong>
            </div>
            <div>
              <Text fw={600}>{session.className}</Text>
              <FitLine fit={fit} />
              <Text size="sm" c="dimmed">
                {session.roomName}, {session.locationName} ·{' '}
                {session.instructorName ?? 'no instructor yet'} · {seatsLeft(session)}
              </Text>
            </div>
            <Button
              data-book
              size="sm"
              variant={index === 0 ? 'filled' : 'default'}
              loading={busyWith === session.id}
              onClick={() => book(session)}
              onKeyDown={onKeyDown}
              aria-label={`${canBook === 'seat' ? 'Book' : 'Join waitlist'}: ${session.className}, ${shortDay(session.on)} ${session.startsLocal}`}
            >
              {canBook === 'seat' ? 'Book' : 'Join waitlist'}
            </Button>
          </li>
        ))}
      </ul>
      {choices.length > shown.length && (
        <Button variant="subtle" mt="xs" onClick={() => setAll(true)}>
          Show {choices.length - shown.length} more
        </Button>
      )}
    </>
  );
}

const seatsLeft = ({ seats, seatsTaken, waiting }: Choice['session']) => {
  const left = seats - seatsTaken;
  return left > 0
    ? `${left} of ${seats} seats left`
    : `full${waiting > 0 ? `, ${waiting} waiting` : ''}`;
};
