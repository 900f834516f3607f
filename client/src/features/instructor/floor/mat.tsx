import { IconCheck, IconHelp, IconNote } from '@tabler/icons-react';
import type { HerMovement, Person, Severity } from '@/api/types';
import { arrivalOf, arrivalWords } from '@/components/check-in/arrival';
import { ageWords } from '@/components/time/days';
import { MovementMark, SeverityMark, VerdictMark } from '@/components/verdict/mark';
import { severityWords, verdictWords } from '@/components/verdict/words';
import classes from './floor.module.css';

interface MatProps {
  person: Person;
  index: number;
  selected: boolean;
  /** A movement of the plan is chosen. */
  choosing: boolean;
  /** What she does instead of it. */
  instead: HerMovement | undefined;
  tabbable: boolean;
  pressing: 'look' | 'check-in';
  onPress: () => void;
}

export function Mat({ person, instead, ...props }: MatProps) {
  const { index, selected, choosing, tabbable, pressing, onPress } = props;
  const here = person.checkedInAt != null;
  const marks = marksOf(person);
  const unfit = person.verdict === 'needsClearance' || person.verdict === 'notSuitable';
  return (
    <button
      type="button"
      className={classes.mat}
      data-mat={index}
      data-here={here || undefined}
      data-selected={selected || undefined}
      data-lit={instead?.verdict}
      data-quiet={(choosing && instead === undefined) || undefined}
      tabIndex={tabbable ? 0 : -1}
      aria-pressed={pressing === 'check-in' ? here : selected}
      aria-label={spoken(person, instead)}
      onClick={onPress}
    >
      <span className={classes.name} lang="">
        {person.called}
      </span>
      <span className={classes.age}>{ageOf(person)}</span>
      <span className={classes.stage}>
        {person.daysSinceBirth != null ? 'after birth' : (person.stageName ?? '')}
      </span>
      {instead !== undefined && (
        <span className={classes.instead}>
          <MovementMark verdict={instead.verdict} />
          <span className={classes.instruction}>{instead.instruction}</span>
        </span>
      )}
      <span className={classes.marks}>
        {unfit && <VerdictMark verdict={person.verdict} pressing />}
        {marks.map(([severity, count]) => (
          <SeverityMark key={severity} severity={severity}>
            {count === 1 ? severityWords[severity] : `${severityWords[severity]} ${count}`}
          </SeverityMark>
        ))}
        {arrivalOf(person) === 'unasked' && (
          <span className={classes.noted}>
            <IconHelp size={16} aria-hidden /> not asked
          </span>
        )}
        {person.notes.length > 0 && (
          <span className={classes.noted}>
            <IconNote size={16} aria-hidden /> {notesOf(person)}
          </span>
        )}
      </span>
      {here && (
        <span className={classes.here}>
          <IconCheck size={16} stroke={2.5} aria-hidden /> here
        </span>
      )}
    </button>
  );
}

/** `24w 3d`, or the time since the birth. */
export const ageOf = (person: Person) => ageWords(person) ?? '';

const severities: Severity[] = ['urgent', 'attention', 'info'];

/** How many flags of each weight; mere notes are left for the details. */
const marksOf = ({ flags }: Person) =>
  severities
    .slice(0, 2)
    .map((severity): [Severity, number] => [
      severity,
      flags.filter((flag) => flag.severity === severity).length,
    ])
    .filter(([, count]) => count > 0);

const notesOf = ({ notes }: Person) => (notes.length === 1 ? '1 note' : `${notes.length} notes`);

const spoken = (person: Person, instead?: HerMovement) =>
  [
    person.called,
    instead?.instruction,
    person.daysSinceBirth != null ? `${ageOf(person)} after birth` : ageOf(person),
    person.stageName,
    person.verdict === 'needsClearance' || person.verdict === 'notSuitable'
      ? verdictWords[person.verdict]
      : null,
    ...person.flags.map(({ text }) => text),
    person.notes.length > 0 ? notesOf(person) : null,
    arrivalWords[arrivalOf(person)],
  ]
    .filter((part) => part != null && part !== '')
    .join(', ');
