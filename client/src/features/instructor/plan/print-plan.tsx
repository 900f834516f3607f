import { useLayoutEffect, useRef, useState } from 'react';
import type { Person, Roster } from '@/api/types';
import { CautionWords } from '@/components/states/safety-note';
import { MovementShape } from '@/components/verdict/movement-shape';
import { SeverityShape } from '@/components/verdict/shapes';
import { movementWords, severityWords } from '@/components/verdict/words';
import { longDay } from '@/components/time/days';
import { ageOf } from '@/features/instructor/floor/mat';
import { keysOf, sizes, type Size } from './one-page';
import { rowOf, throughoutOf, throughTheClass } from './who-does-what';
import classes from './print-plan.module.css';

/**
 * Movements down, people across, on one page whatever the paper: laid out unseen at the size of the
 * smaller of A4 and Letter, from large type to small, until it fits; then with letters for the longer
 * instructions.
 */
export function PrintPlan({ roster }: { roster: Roster }) {
  const { plan, people } = roster;
  if (plan.length === 0 || people.length === 0) return null;
  // Fitted anew whenever what stands on it changes.
  return <Fitted key={JSON.stringify([plan, people.map(onPaper)])} roster={roster} />;
}

const onPaper = (person: Person) => [
  person.called,
  ageOf(person),
  person.movements.map(({ instruction }) => instruction),
  person.flags.map(({ severity }) => severity),
  throughTheClass(person).map(({ text }) => text),
];

function Fitted({ roster }: { roster: Roster }) {
  const room = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const [at, setAt] = useState(0);
  const [ready, setReady] = useState(false);
  const size = sizes[at] ?? sizes[0];

  useLayoutEffect(() => {
    const [page, content] = [room.current, sheet.current];
    if (page === null || content === null || at === sizes.length - 1) return;
    const over = content.scrollHeight > page.clientHeight || content.scrollWidth > page.clientWidth;
    if (over) setAt(at + 1);
  }, [at, ready]);

  // The type itself may arrive after the first look.
  useLayoutEffect(() => {
    let left = false;
    void document.fonts.ready.then(() => {
      if (left) return;
      setAt(0);
      setReady(true);
    });
    return () => {
      left = true;
    };
  }, []);

  return (
    <div className={classes.unseen} aria-hidden="true">
      <div className={classes.page} ref={room}>
        <div
          className={classes.sheet}
          ref={sheet}
          style={{ fontSize: `${size.points}pt` }}
          data-points={size.points}
          data-keyed={size.keyed || undefined}
          data-many={roster.people.length > 14 || undefined}
        >
          <Content roster={roster} size={size} />
        </div>
      </div>
    </div>
  );
}

function Content({ roster, size }: { roster: Roster; size: Size }) {
  const { session, plan, people, emergencyNumber } = roster;
  const keys = size.keyed ? keysOf(people, plan) : undefined;
  return (
    <>
      <h1>
        {session.className}, {longDay(session.on)}, {session.startsLocal}–{session.endsLocal}
      </h1>
      <p>
        {session.roomName}, {session.locationName}
        {session.instructorName != null && ` · ${session.instructorName}`} · {people.length} of{' '}
        {session.seats} · {plan.reduce((sum, { minutes }) => sum + minutes, 0)} min
      </p>
      <table>
        <colgroup>
          <col className={classes.first} />
        </colgroup>
        <thead>
          <tr>
            <th>Movement</th>
            {people.map((person) => (
              <th key={person.bookingId}>
                {person.called}
                <span className={classes.age}>{ageOf(person)}</span>
                <Flags person={person} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {plan.map(({ position, name, minutes }) => (
            <tr key={position}>
              <th>
                {position}. {name}, {minutes} min
              </th>
              {rowOf(people, position).map(({ instruction, verdict, span }, index) => (
                <td key={index} colSpan={span}>
                  {verdict === undefined ? (
                    '·'
                  ) : (
                    <>
                      <MovementShape verdict={verdict} /> {keys?.get(instruction) ?? instruction}
                    </>
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <Throughout people={people} elsewhere={size.elsewhere === true} />
      {keys !== undefined && (
        <ul className={classes.keys}>
          {[...keys].map(([instruction, key]) => (
            <li key={key}>
              <strong>{key}</strong> {instruction}
            </li>
          ))}
        </ul>
      )}
      <p>
        · as taught
        {(['adapted', 'replaced', 'leftOut'] as const).map((verdict) => (
          <span key={verdict}>
            {'   '}
            <MovementShape verdict={verdict} /> {movementWords[verdict].toLowerCase()}
          </span>
        ))}
        {(['urgent', 'attention'] as const).map((severity) => (
          <span key={severity}>
            {'   '}
            <SeverityShape severity={severity} /> flag: {severityWords[severity].toLowerCase()}
          </span>
        ))}
      </p>
      <p>
        From the studio’s rules as of the day of the class; the source of each stands beside it in
        the program.
      </p>
      <CautionWords number={emergencyNumber} onPaper />
    </>
  );
}

/** What holds for somebody whatever the movement: the words of her letter, its ceilings. */
function Throughout({ people, elsewhere }: { people: readonly Person[]; elsewhere: boolean }) {
  const throughout = throughoutOf(people);
  if (throughout.length === 0) return null;
  if (elsewhere)
    return (
      <p>
        <strong>All through the class, in words on the roster:</strong>{' '}
        {people
          .filter((person) => throughTheClass(person).length > 0)
          .map(({ called }) => called)
          .join(', ')}
        . Read them there before the class begins.
      </p>
    );
  return (
    <ul className={classes.keys} data-throughout>
      {throughout.map(({ text, people: them }) => (
        <li key={text}>
          <strong>{them.map(({ called }) => called).join(', ')}:</strong> {text}
        </li>
      ))}
    </ul>
  );
}

const Flags = ({ person: { flags } }: { person: Person }) => (
  <span className={classes.flags}>
    {(['urgent', 'attention'] as const)
      .filter((severity) => flags.some((flag) => flag.severity === severity))
      .map((severity) => (
        <SeverityShape key={severity} severity={severity} />
      ))}
  </span>
);
