import { Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { sessionsQueries } from '@/api/sessions';
import type { ClassNote, Person, SessionNotes } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import { ageWords, longDay } from '@/components/time/days';
import { NoteField } from './note-field';
import { NoteList } from './note-list';
import classes from './notes.module.css';

interface Props {
  sessionId: number;
  people: readonly Person[];
  /**
   * Before the class there is nothing to note and this is left out; but whoever is in class mode may
   * have lost the connection since, so there she may write and it is sent when it can be.
   */
  early: 'hide' | 'write';
}

/** A field for each person of a class, from its start until a week after. */
export function NotesAfter({ sessionId, people, early }: Props) {
  const notes = useQuery(sessionsQueries.notes(sessionId));
  const begun = notes.data === undefined || notes.data.notes.length > 0 || open(notes.data);
  if (early === 'hide' && !begun) return null;
  return (
    <section aria-labelledby="notes-after">
      <Title order={2} id="notes-after">
        Notes after class
      </Title>
      <Asked query={notes} waiting={<Lines count={2} height={90} />}>
        {(data) => <Fields sessionId={sessionId} people={people} data={data} early={early} />}
      </Asked>
    </section>
  );
}

const open = ({ whyNot }: SessionNotes) => whyNot == null;

function Fields({ sessionId, people, data, early }: Props & { data: SessionNotes }) {
  const waits = data.whyNot?.code === 'not-begun' && early === 'write';
  const others = data.notes.filter(({ isMine }) => !isMine);
  const of = (clientId: number) =>
    data.notes.find((note: ClassNote) => note.isMine && note.clientId === clientId);
  return (
    <>
      {data.whyNot == null || waits ? (
        <>
          <Text c="dimmed" maw="46rem">
            What you saw, in plain words; no diagnosis. Each is saved on its own until{' '}
            {longDay(data.lastDay)}. Whoever next has her in a class reads it, and so may she and
            the owner.
          </Text>
          {waits && (
            <Text>
              This session had not begun when this page last heard from the studio. What you write
              stays on this device; it can be saved from the start on.
            </Text>
          )}
          <div className={classes.fields}>
            {people.map((person) => (
              <NoteField
                key={person.clientId}
                sessionId={sessionId}
                clientId={person.clientId}
                called={person.called}
                aside={ageWords(person) ?? undefined}
                note={of(person.clientId)}
              />
            ))}
          </div>
        </>
      ) : (
        <>
          <Text>{data.whyNot.message}</Text>
          <NoteList notes={data.notes.filter(({ isMine }) => isMine)} />
        </>
      )}
      {others.length > 0 && (
        <>
          <Title order={3} mt="md">
            Written by others
          </Title>
          <NoteList notes={others} />
        </>
      )}
    </>
  );
}
