import { Text } from '@mantine/core';
import type { Fit } from '@/api/types';
import { VerdictMark } from '@/components/verdict/mark';
import classes from './booking.module.css';

interface Props {
  fit: Fit;
  pressing?: boolean;
  /** The verdict without its line of why. */
  short?: boolean;
}

/** How a session suits her, in one line: the verdict, then why. */
export const FitLine = ({ fit, pressing = false, short = false }: Props) => (
  <div className={classes.fit}>
    <VerdictMark verdict={fit.verdict} pressing={pressing}>
      {fit.label}
    </VerdictMark>
    {!short && <Text size="sm">{fit.summary}</Text>}
  </div>
);
