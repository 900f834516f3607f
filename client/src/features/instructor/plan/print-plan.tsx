import type { Roster } from '@/api/types';
import { longDay } from '@/components/time/days';
import { rowOf } from './who-does-what';
import classes from './print-plan.module.css';

/** Movements down, people across, on one page of its own. */
export function PrintPlan({ roster: { session, plan, people } }: { roster: Roster }) {
  if (plan.length === 0 || people.length === 0) return null;
  return (
    <div className={classes.sheet}>
      <h2>
        {session.className}, {longDay(session.on)}, {session.startsLocal}: who does what
      </h2>
      <table>
        <colgroup>
          <col className={classes.first} />
        </colgroup>
        <thead>
          <tr>
            <th>Movement (empty: as taught)</th>
            {people.map(({ bookingId, called }) => (
              <th key={bookingId}>{called}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {plan.map(({ position, name, minutes }) => (
            <tr key={position}>
              <th>
                {position}. {name}, {minutes} min
              </th>
              {rowOf(people, position).map(({ instruction, span }, index) => (
                <td key={index} colSpan={span}>
                  {instruction}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
