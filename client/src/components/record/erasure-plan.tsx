import { Text, Title } from '@mantine/core';
import type { ErasurePlan } from '@/api/types';
import { fullDate } from '@/components/time/days';
import classes from './record.module.css';

/** What an erasure takes away at once, what has to stay and until when, and why. */
export const PlanWords = ({ plan }: { plan: ErasurePlan }) => (
  <>
    <Title order={3} mt="md">
      Erased at once
    </Title>
    <ul className={classes.list}>
      {plan.goes.map(({ title, entries }) => (
        <li key={title}>
          {entries == null ? title : `${title}: ${entries} ${entriesWord(entries)}`}
        </li>
      ))}
      {plan.released > 0 && (
        <li>
          {plan.released === 1
            ? 'One booking to come is let go without charge'
            : `${plan.released} bookings to come are let go without charge`}
          ; the seats go to those who wait.
        </li>
      )}
    </ul>
    <Title order={3} mt="md">
      Kept for a time, set apart
    </Title>
    {plan.stays.length === 0 ? (
      <Text mt="xs">Nothing.</Text>
    ) : (
      <ul className={classes.list}>
        {plan.stays.map(({ part, title, lastDay, why }) => (
          <li key={part}>
            <strong>{title}</strong>, until {fullDate(lastDay)}. {why}
          </li>
        ))}
      </ul>
    )}
    <Title order={3} mt="md">
      Stays, and names nobody
    </Title>
    <ul className={classes.list}>
      {plan.staysWithoutName.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  </>
);

const entriesWord = (count: number) => (count === 1 ? 'entry' : 'entries');
