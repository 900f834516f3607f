import { Title, UnstyledButton, Text } from '@mantine/core';
import type { DraftSession, TimetableConflict } from '@/api/types';
import { Empty } from '@/components/states/asked';
import { longDay } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { conflictWords } from './conflict-words';
import { endOf, spotOf } from './place';
import type { Named } from './words';
import classes from './board.module.css';

interface Props {
  days: readonly string[];
  sessions: readonly DraftSession[];
  conflicts: ReadonlyMap<number, TimetableConflict[]>;
  named: Named;
  open: (session: DraftSession) => void;
}

/** The week as a list, for a narrow screen and for whoever prefers to read it. */
export function SessionList({ days, sessions, conflicts, named, open }: Props) {
  const shown = days
    .map((day) => ({
      day,
      of: sessions
        .filter(({ on }) => on === day)
        .sort((a, b) => a.startsLocal.localeCompare(b.startsLocal)),
    }))
    .filter(({ of }) => of.length > 0);
  if (shown.length === 0)
    return <Empty title="No sessions in this week">Add one, or copy a week.</Empty>;
  return shown.map(({ day, of }) => (
    <section key={day}>
      <Title order={2} mt="lg" mb={4}>
        {longDay(day)}
      </Title>
      {of.map((session) => (
        <UnstyledButton key={session.id} className={classes.listed} onClick={() => open(session)}>
          <span>
            <Text component="span" fw={700} className={session.isHeld ? undefined : classes.off}>
              {session.startsLocal}–{endOf(session)} {named.className(session)}
            </Text>
            <Text component="span" display="block" size="sm" c="dimmed">
              {named.room(spotOf(session))} · {named.who(session)}
            </Text>
            {(conflicts.get(session.key) ?? []).map(({ words, kind, isHard }) => (
              <span key={words} title={words}>
                <Needs tone={isHard ? 'stop' : 'mind'}>{conflictWords[kind]}</Needs>{' '}
              </span>
            ))}
          </span>
          <Text component="span" size="sm" c="dimmed">
            {!session.isHeld
              ? 'Called off'
              : session.sessionId == null
                ? 'New'
                : session.isChanged
                  ? 'Changed'
                  : `${session.seatsTaken}/${session.seats}`}
          </Text>
        </UnstyledButton>
      ))}
    </section>
  ));
}
