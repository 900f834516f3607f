import { Title } from '@mantine/core';
import type { Person, Planned } from '@/api/types';
import { howMany } from './who-does-what';
import classes from './plan.module.css';

export interface PlanProps {
  plan: readonly Planned[];
  people: readonly Person[];
  chosen: number | null;
  onChoose: (position: number | null) => void;
}

/** What is taught, in order. The choice is a set of radio buttons, so arrows walk it as they do anywhere. */
export function PlanPanel({ plan, people, chosen, onChoose }: PlanProps) {
  const clear = (event: React.KeyboardEvent) => {
    if (event.key === 'Escape') onChoose(null);
  };
  return (
    <div role="radiogroup" aria-labelledby="plan">
      <Title order={2} id="plan">
        Class plan
      </Title>
      <ol className={classes.list}>
        <Line checked={chosen === null} onCheck={() => onChoose(null)} onKeyDown={clear}>
          <span className={classes.name}>Nothing chosen</span>
        </Line>
        {plan.map(({ position, name, minutes }) => (
          <Line
            key={position}
            checked={chosen === position}
            onCheck={() => onChoose(position)}
            onKeyDown={clear}
          >
            <span className={classes.name}>
              {position}. {name}
            </span>
            <Others count={howMany(people, position)} />
            <span className={classes.minutes}>{minutes} min</span>
          </Line>
        ))}
      </ol>
    </div>
  );
}

const Others = ({ count }: { count: number }) =>
  count === 0 ? null : (
    <span className={classes.others}>{count === 1 ? '1 differs' : `${count} differ`}</span>
  );

interface LineProps {
  checked: boolean;
  onCheck: () => void;
  onKeyDown: (event: React.KeyboardEvent) => void;
  children: React.ReactNode;
}

const Line = ({ checked, onCheck, onKeyDown, children }: LineProps) => (
  <li>
    <label className={classes.line} data-chosen={checked || undefined}>
      <input
        type="radio"
        name="movement"
        checked={checked}
        onChange={onCheck}
        onKeyDown={onKeyDown}
      />
      {children}
    </label>
  </li>
);
