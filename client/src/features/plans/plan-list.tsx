import { Text } from '@mantine/core';
import type { PlanItem } from '@/api/types';
import classes from './plans.module.css';

/** A plan to be read. */
export const PlanList = ({ items }: { items: readonly PlanItem[] }) =>
  items.length === 0 ? (
    <Text>It has no movement.</Text>
  ) : (
    <ol className={classes.readOnly}>
      {items.map(({ name, minutes }, at) => (
        <li key={at}>
          {name}, {minutes} min
        </li>
      ))}
    </ol>
  );
