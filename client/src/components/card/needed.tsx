import type { ClientCard } from '@/api/types';
import { shortDay } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { RangHer } from './rang-her';
import classes from './card.module.css';

export function Needed({ her }: { her: ClientCard }) {
  const { needs } = her;
  if (needs.length === 0) return null;
  return (
    <ul className={classes.needed} aria-label="What is needed">
      {needs.map(({ code, says, by }) => (
        <li key={code}>
          <Needs tone="mind">
            {says}
            {by != null && ` By ${shortDay(by)}.`}
          </Needs>
          {code === 'ring-her' && <RangHer clientId={her.id} called={her.called} />}
        </li>
      ))}
    </ul>
  );
}
