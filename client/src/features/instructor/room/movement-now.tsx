import { Title } from '@mantine/core';
import type { Planned } from '@/api/types';
import { clockWords } from './clock';
import classes from './room.module.css';

interface Props {
  /** None in a class without a plan. */
  movement?: Planned;
  next?: Planned;
  /** Milliseconds at this movement. */
  spent: number;
}

/** The movement being taught, as large as it can be read from. */
export function MovementNow({ movement, next, spent }: Props) {
  if (movement === undefined)
    return (
      <section className={classes.now} aria-label="The class">
        <Title order={2} className={classes.name}>
          No plan
        </Title>
        <p className={classes.cue}>Beside each name stands what she does differently.</p>
      </section>
    );
  return (
    <section className={classes.now} aria-label="The movement now">
      <div role="status">
        <Title order={2} className={classes.name}>
          {movement.name}
        </Title>
      </div>
      <p className={classes.cue}>{movement.cue}</p>
      <p className={classes.clock}>
        {clockWords(spent, movement.minutes)}
        <span className={classes.effort}>effort {movement.effort} of 10</span>
      </p>
      <p className={classes.next}>
        {next === undefined ? (
          'The last movement'
        ) : (
          <>
            Next: <strong>{next.name}</strong>, {next.minutes} min
          </>
        )}
      </p>
    </section>
  );
}
