import { UnstyledButton } from '@mantine/core';
import { IconCheck, IconHelp } from '@tabler/icons-react';
import type { Person } from '@/api/types';
import { arrivalOf, arrivalWords } from '@/components/check-in/arrival';
import { MovementMark, SeverityMark, VerdictMark } from '@/components/verdict/mark';
import { ageOf } from '@/features/instructor/floor/mat';
import { alwaysOf, groupsAt } from './groups';
import classes from './room.module.css';

interface Props {
  people: readonly Person[];
  /** The movement by its place; none in a class without a plan. */
  position: number | null;
  onLook: (person: Person) => void;
}

/** Who does something else and what, to be read from two metres; the others in a line. */
export function WhoDoesWhat({ people, position, onLook }: Props) {
  if (people.length === 0)
    return (
      <section className={classes.who} aria-label="Who does what">
        <p className={classes.count}>Nobody is booked yet</p>
      </section>
    );
  if (position === null) return <Everybody people={people} onLook={onLook} />;
  const { groups, asTaught } = groupsAt(people, position);
  return (
    <section className={classes.who} aria-label="Who does what">
      <ul className={classes.groups}>
        {groups.map(({ instruction, verdict, people: them }) => (
          <li key={`${verdict}${instruction}`} className={classes.group}>
            <MovementMark verdict={verdict} />
            <p className={classes.instruction}>{instruction}</p>
            <Names people={them} onLook={onLook} large />
          </li>
        ))}
      </ul>
      <Throughout people={people} onLook={onLook} />
      {asTaught.length > 0 && (
        <div className={classes.taught}>
          <p className={classes.count}>{taughtWords(asTaught.length, people.length)}</p>
          <Names people={asTaught} onLook={onLook} />
        </div>
      )}
    </section>
  );
}

const taughtWords = (count: number, all: number) =>
  count === all ? `Everybody as taught (${all})` : `${count} as taught`;

/** What holds whatever the movement, such as the words of a letter and its ceilings; it stands still as the class goes on. */
function Throughout({
  people,
  onLook,
}: {
  people: readonly Person[];
  onLook: (p: Person) => void;
}) {
  const cards = alwaysOf(people);
  if (cards.length === 0) return null;
  return (
    <section className={classes.throughout} aria-label="All through the class">
      <p className={classes.count}>All through the class</p>
      <ul className={classes.groups}>
        {cards.map(({ texts, people: them }) => (
          <li key={texts[0]} className={classes.always}>
            <Names people={them} onLook={onLook} />
            {texts.map((text) => (
              <p key={text} className={classes.ceiling}>
                {text}
              </p>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Without a plan: everybody, each with all she does differently. */
function Everybody({ people, onLook }: { people: readonly Person[]; onLook: (p: Person) => void }) {
  return (
    <section className={classes.who} aria-label="Who does what">
      <ul className={classes.groups}>
        {people.map((person) => (
          <li key={person.bookingId} className={classes.group}>
            <Names people={[person]} onLook={onLook} large />
            <p className={classes.instruction}>
              {person.instructions.map(({ text }) => text).join(' ') || 'As taught'}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

interface NamesProps {
  people: readonly Person[];
  onLook: (person: Person) => void;
  large?: boolean;
}

function Names({ people, onLook, large = false }: NamesProps) {
  return (
    <ul className={classes.names} data-large={large || undefined}>
      {people.map((person) => {
        const urgent = person.flags.some(({ severity }) => severity === 'urgent');
        const arrival = arrivalOf(person);
        const unfit = person.verdict === 'needsClearance' || person.verdict === 'notSuitable';
        return (
          <li key={person.bookingId}>
            <UnstyledButton className={classes.person} onClick={() => onLook(person)}>
              <span lang="">{person.called}</span>{' '}
              {large && <span className={classes.age}>{ageOf(person)}</span>}{' '}
              {unfit && <VerdictMark verdict={person.verdict} pressing />}{' '}
              {urgent && <SeverityMark severity="urgent" />}
              {arrival === 'well' && (
                <IconCheck size="0.8em" stroke={2.5} role="img" aria-label={arrivalWords.well} />
              )}
              {arrival === 'unasked' && (
                <IconHelp size="0.8em" stroke={2.5} role="img" aria-label={arrivalWords.unasked} />
              )}
            </UnstyledButton>
          </li>
        );
      })}
    </ul>
  );
}
