import { Anchor, Text } from '@mantine/core';
import type { ReactNode } from 'react';
import type { ClientCard } from '@/api/types';
import { fullDate } from '@/components/time/days';
import classes from './questions.module.css';

/** What she is asked to call right, and how it is changed when it is not. */
export const herFacts = (her: ClientCard, change: ReactNode) => ({
  dates: (
    <div className={classes.facts}>
      <Text fw={600}>
        {her.pregnancy?.bornOn != null
          ? `Birth on ${fullDate(her.pregnancy.bornOn)}`
          : her.pregnancy?.dueDate != null
            ? `Due ${fullDate(her.pregnancy.dueDate)}`
            : 'No date yet'}
      </Text>
      {change}
    </div>
  ),
  emergency: (
    <div className={classes.facts}>
      {her.emergencyName === '' && her.emergencyPhone === '' ? (
        <Text fw={600}>Nobody is named yet.</Text>
      ) : (
        <Text fw={600}>
          {her.emergencyName}{' '}
          {her.emergencyPhone !== '' && (
            <Anchor href={`tel:${her.emergencyPhone}`}>{her.emergencyPhone}</Anchor>
          )}
        </Text>
      )}
      {change}
    </div>
  ),
});
