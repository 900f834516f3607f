import type { Roster } from '@/api/types';
import { CautionWords } from '@/components/states/safety-note';
import { severityWords, verdictWords } from '@/components/verdict/words';
import { longDay } from '@/components/time/days';
import { ageOf } from './floor/mat';
import { throughTheClass } from './plan/who-does-what';
import classes from './teach.module.css';

/** The roster on one sheet of paper, black on white. On screen it is not shown. */
export function PrintSheet({ roster }: { roster: Roster }) {
  const { session, people, plan } = roster;
  // With a plan, a page of its own says it movement by movement.
  const planned = plan.length > 0;
  return (
    <div className={classes.paper} aria-hidden="true">
      <h1>
        {session.className}, {longDay(session.on)}, {session.startsLocal}–{session.endsLocal}
      </h1>
      <p>
        {session.roomName}, {session.locationName} · {session.instructorName} · {people.length} of{' '}
        {session.seats}
      </p>
      <table>
        <thead>
          <tr>
            <th>Here</th>
            <th>Called</th>
            <th>That day</th>
            {!planned && <th>What to do differently</th>}
            <th>Mind</th>
          </tr>
        </thead>
        <tbody>
          {people.map((person) => (
            <tr key={person.bookingId}>
              <td className={classes.box} />
              <td>
                <strong>{person.called}</strong>
              </td>
              <td className={classes.age}>
                {ageOf(person)}
                {person.daysSinceBirth != null && ' after birth'}
                <br />
                {person.stageName}
              </td>
              {!planned && (
                <td>{person.instructions.map(({ text }) => text).join(' ') || 'as taught'}</td>
              )}
              <td>
                {(person.verdict === 'needsClearance' || person.verdict === 'notSuitable') &&
                  `${verdictWords[person.verdict]}. `}
                {planned &&
                  throughTheClass(person)
                    .map(({ text }) => `${text} `)
                    .join('')}
                {person.flags
                  .map(({ severity, text }) => `${severityWords[severity]}: ${text}`)
                  .join(' ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <CautionWords number={roster.emergencyNumber} onPaper />
    </div>
  );
}
