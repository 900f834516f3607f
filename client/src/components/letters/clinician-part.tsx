import type { RequestLetter } from '@/api/types';
import classes from './request.module.css';

/** What is ticked and signed by her clinician. */
export function ClinicianPart({ letter }: { letter: RequestLetter }) {
  return (
    <div className={classes.answer}>
      <h3>For the clinician</h3>
      <ul>
        <Tick>She may take part as described.</Tick>
        <Tick>She may take part, without what is ticked below.</Tick>
        <Tick>She should not take part for now.</Tick>
      </ul>
      <h3>Please leave out: positions</h3>
      <ul className={classes.ticks}>
        {letter.positions.map((name) => (
          <Tick key={name}>{name}</Tick>
        ))}
      </ul>
      <h3>Please leave out: what a movement asks for</h3>
      <ul className={classes.ticks}>
        {letter.demands.map((name) => (
          <Tick key={name}>{name}</Tick>
        ))}
      </ul>
      <Lines>
        <Line label="Effort at most (0 to 10)" />
        <Line label="Heart rate at most (a minute)" />
      </Lines>
      <Lines>
        <Line label="In words, for her instructor" />
      </Lines>
      <Lines>
        <Line label="Holds until (day, month, year)" />
        <Line label="Replaces my earlier letters" />
      </Lines>
      <Lines>
        <Line label="Name and practice" />
        <Line label="Phone" />
      </Lines>
      <Lines>
        <Line label="Signature" />
        <Line label="Date" />
      </Lines>
    </div>
  );
}

const Tick = ({ children }: { children: string }) => (
  <li className={classes.tick}>
    <span className={classes.box} />
    {children}
  </li>
);

const Lines = ({ children }: { children: React.ReactNode }) => (
  <div className={classes.lines}>{children}</div>
);

const Line = ({ label }: { label: string }) => (
  <div className={classes.lineOf}>
    <span>{label}</span>
    <span className={classes.line} />
  </div>
);
