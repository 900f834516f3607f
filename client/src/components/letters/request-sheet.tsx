import { useLayoutEffect, useRef } from 'react';
import type { RequestLetter } from '@/api/types';
import { fullDate, sinceBirth } from '@/components/time/days';
import { ClinicianPart } from './clinician-part';
import classes from './request.module.css';

/** From well readable down to what can just be read, in points. */
const sizes = [10, 9.5, 9, 8.5, 8, 7.5, 7, 6.5];

/** Makes the type as large as one page allows; with many classes it is smaller. */
function useOnePage() {
  const room = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const fit = () => {
      if (room.current === null || sheet.current === null) return;
      for (const points of sizes) {
        sheet.current.style.fontSize = `${points}pt`;
        if (sheet.current.scrollHeight <= room.current.clientHeight) break;
      }
    };
    fit();
    // Type that came later may be wider.
    void document.fonts.ready.then(fit);
  });
  return { room, sheet };
}

/** The page itself: black on white, one sheet of either paper. */
export function RequestSheet({ letter }: { letter: RequestLetter }) {
  const { room, sheet } = useOnePage();
  return (
    // What scrolls must be reachable by keyboard.
    <div className={classes.scroll} role="region" aria-label="The page to print" tabIndex={0}>
      <div className={classes.page} ref={room}>
        <div className={classes.sheet} ref={sheet} data-sheet="request">
          <Head letter={letter} />
          <Classes letter={letter} />
          <ClinicianPart letter={letter} />
        </div>
      </div>
    </div>
  );
}

function Head({ letter }: { letter: RequestLetter }) {
  const { studioName, name, on, dueDate, age, daysSinceBirth, conditions, heartRate } = letter;
  return (
    <>
      <h2>{studioName}: may she exercise with us?</h2>
      <p>
        To the midwife or doctor of <strong>{name}</strong>, {fullDate(on)}. She would like to take
        part in the classes below. Please tell us whether she may and what she should leave out,
        sign, and give the page back to her.
      </p>
      <p>
        {dueDate != null && `Due ${fullDate(dueDate)}. `}
        {age != null && `Today ${age}. `}
        {daysSinceBirth != null && `${sinceBirth(daysSinceBirth)} after a birth. `}
        {heartRate != null && `Heart rate we would use: ${heartRate.says} a minute. `}
        {conditions == null ? (
          <>What you should know of my health: {<span className={classes.line} />}</>
        ) : conditions.length === 0 ? (
          'Our record holds no condition of hers.'
        ) : (
          `Our record says: ${conditions.join(', ')}.`
        )}
      </p>
    </>
  );
}

function Classes({ letter: { classes: taught, effortMost, talkTest } }: { letter: RequestLetter }) {
  return (
    <>
      <table>
        <thead>
          <tr>
            <th>Class</th>
            <th>Minutes</th>
            <th>Effort of 10</th>
            <th>What is in it</th>
          </tr>
        </thead>
        <tbody>
          {taught.map(({ name, about, minutes, effort, asks }) => (
            <tr key={name}>
              <td>
                <strong>{name}.</strong> {about}
              </td>
              <td>{minutes}</td>
              <td>{effort}</td>
              <td>{asks.join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        Every class is changed for each person by her stage and by what your letter asks for.
        {effortMost != null && ` Nobody pregnant is asked for more than ${effortMost} of 10.`} At
        moderate effort: {talkTest}
      </p>
    </>
  );
}
