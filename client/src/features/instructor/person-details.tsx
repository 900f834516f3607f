import { Anchor, CloseButton, Group, Text, Title } from '@mantine/core';
import type { Person, SessionSummary } from '@/api/types';
import { Door } from '@/components/check-in/door';
import { NoteList } from '@/components/notes/note-list';
import { Needs, SeverityMark, VerdictMark } from '@/components/verdict/mark';
import { ageOf } from './floor/mat';
import { HerInstructions } from './plan/her-instructions';
import { HerPlan } from './plan/her-plan';
import classes from './teach.module.css';

interface Props {
  person?: Person;
  session: SessionSummary;
  canCheckIn: boolean;
  onClose: () => void;
}

/** What to mind about one person: flags, then what to do, then what she chose to share. */
export function PersonDetails({ person, session, canCheckIn, onClose }: Props) {
  if (person === undefined)
    return (
      <aside className={classes.hint}>
        <Text c="dimmed">Press a mat to see what to mind about the person on it.</Text>
      </aside>
    );
  return (
    <aside className={classes.details} aria-label={person.called} aria-live="polite">
      <Group justify="space-between" wrap="nowrap" align="flex-start">
        <div>
          <Title order={2}>{person.called}</Title>
          <PersonAge person={person} />
        </div>
        <CloseButton size="lg" aria-label="Close the details" onClick={onClose} />
      </Group>
      <PersonFacts person={person} session={session} canCheckIn={canCheckIn} />
    </aside>
  );
}

/** How far along she is that day, and her name in full. */
export const PersonAge = ({ person }: { person: Person }) => (
  <>
    <Text>
      <strong>{ageOf(person)}</strong>
      {person.daysSinceBirth != null && ' after birth'}
      {person.stageName != null && `, ${person.stageName}`}
    </Text>
    <Text size="sm" c="dimmed">
      {person.name}
    </Text>
  </>
);

/** All there is to mind about her, whom to call, and what can be done. */
export function PersonFacts({ person, session, canCheckIn }: FactsProps) {
  const unfit = person.verdict === 'needsClearance' || person.verdict === 'notSuitable';
  return (
    <>
      {person.mayHaveGivenBirth && <Needs tone="mind">She may have given birth by then</Needs>}
      {unfit && (
        <div>
          <VerdictMark verdict={person.verdict} pressing />
          {person.administrative != null && <Text>{person.administrative}</Text>}
        </div>
      )}
      {person.flags.length > 0 && (
        <ul className={classes.list}>
          {person.flags.map((flag) => (
            <li key={flag.id} className={classes.flag}>
              <SeverityMark severity={flag.severity} />
              <span>{flag.text}</span>
            </li>
          ))}
        </ul>
      )}
      {person.movements.length > 0 ? (
        <HerPlan person={person} />
      ) : (
        <HerInstructions person={person} />
      )}
      <HowHard person={person} />
      {person.conditions.length > 0 && (
        <section>
          <Title order={3}>She lets you know</Title>
          <Text>{person.conditions.join(', ')}</Text>
        </section>
      )}
      {person.notes.length > 0 && (
        <section>
          <Title order={3}>Seen in earlier classes</Title>
          <NoteList notes={person.notes} />
        </section>
      )}
      {person.emergency != null && (
        <section>
          <Title order={3}>In an emergency</Title>
          <Text>
            {person.emergency.name}{' '}
            <Anchor href={`tel:${person.emergency.phone}`}>{person.emergency.phone}</Anchor>
          </Text>
        </section>
      )}
      <Door person={person} sessionId={session.id} canCheckIn={canCheckIn} notWell="Warning sign" />
    </>
  );
}

/** The heart rate she keeps to, where one is known, and what she can still say. */
function HowHard({ person: { heartRate, talkTest } }: { person: Person }) {
  if (heartRate == null && talkTest == null) return null;
  return (
    <section>
      <Title order={3}>How hard</Title>
      {heartRate != null && (
        <Text>
          Heart rate {heartRate.says} a minute
          {heartRate.byLetter && ', by her letter'}
          {heartRate.sources.length > 0 && (
            <Text component="span" display="block" size="xs" c="dimmed">
              {heartRate.sources.map(({ cite }) => cite).join('; ')}
            </Text>
          )}
        </Text>
      )}
      {talkTest != null && <Text>{talkTest}</Text>}
    </section>
  );
}

interface FactsProps {
  person: Person;
  session: SessionSummary;
  canCheckIn: boolean;
}
