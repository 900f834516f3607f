import { Text } from '@mantine/core';
import { IconCheck } from '@tabler/icons-react';
import type { WantedItem } from '@/api/plans';
import { Needs } from '@/components/verdict/mark';
import { minutesOf } from './draft';
import { timeWords } from './effort';
import classes from './plans.module.css';

/** The time planned against the time there is. */
export function PlanTime({ items, length }: { items: readonly WantedItem[]; length: number }) {
  const planned = minutesOf(items);
  const { state, words } = timeWords(planned, length);
  return (
    <Text component="div" className={classes.time} role="status" aria-label="Time planned">
      <strong>
        {planned} of {length} minutes
      </strong>{' '}
      {state === 'full' ? (
        <span className={classes.full}>
          <IconCheck size={16} aria-hidden /> {words}
        </span>
      ) : (
        <Needs tone={state === 'over' ? 'stop' : 'mind'}>{words}</Needs>
      )}
    </Text>
  );
}
