import { UnstyledButton } from '@mantine/core';
import type { Person, Planned } from '@/api/types';
import { howMany } from '@/features/instructor/plan/who-does-what';
import type { Stop } from './steps';
import classes from './room.module.css';

interface Props {
  plan: readonly Planned[];
  people: readonly Person[];
  at: Stop;
  onShow: (stop: Stop) => void;
}

/** Every movement and the notes; a press goes there. */
export const JumpList = ({ plan, people, at, onShow }: Props) => (
  <ol className={classes.jumps}>
    {plan.map(({ position, name, minutes }) => (
      <li key={position}>
        <UnstyledButton
          className={classes.jump}
          aria-current={position === at ? 'step' : undefined}
          onClick={() => onShow(position)}
        >
          <span>
            {position}. {name}
          </span>
          <span className={classes.differ}>{differ(howMany(people, position))}</span>
          <span>{minutes} min</span>
        </UnstyledButton>
      </li>
    ))}
    <li>
      <UnstyledButton
        className={classes.jump}
        aria-current={at === 'notes' ? 'step' : undefined}
        onClick={() => onShow('notes')}
      >
        <span>Notes after class</span>
      </UnstyledButton>
    </li>
  </ol>
);

const differ = (count: number) =>
  count === 0 ? '' : count === 1 ? '1 differs' : `${count} differ`;
