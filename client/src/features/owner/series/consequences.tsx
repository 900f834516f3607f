import { Alert, Checkbox, Stack, Text } from '@mantine/core';
import type { ChangesPreview } from '@/api/types';
import { Needs } from '@/components/verdict/mark';
import classes from './series.module.css';

interface Props {
  changes: ChangesPreview;
  anyway?: boolean;
  onAnyway?: (anyway: boolean) => void;
}

export const isRefused = ({ conflicts }: ChangesPreview) => conflicts.some(({ isHard }) => isHard);

export const needsWord = (changes: ChangesPreview) =>
  changes.conflicts.length > 0 && !isRefused(changes);

const times = (count: number, one: string, many: string) =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** What a change would do, before it is kept: conflicts by name, and what it means for people. */
export function Consequences({ changes, anyway = false, onAnyway }: Props) {
  const { added, changed, calledOff, conflicts, consequences } = changes;
  const parts = [
    ...(changed > 0 ? [times(changed, 'session changes', 'sessions change')] : []),
    ...(added > 0 ? [times(added, 'session is added', 'sessions are added')] : []),
    ...(calledOff > 0
      ? [times(calledOff, 'session is called off', 'sessions are called off')]
      : []),
  ];
  return (
    <Stack gap="sm" role="status">
      <Text fw={600}>{parts.length === 0 ? 'No session changes.' : `${parts.join(', ')}.`}</Text>
      {conflicts.length > 0 && (
        <Alert
          color={isRefused(changes) ? 'brick' : 'amber'}
          variant="light"
          title={isRefused(changes) ? 'This cannot be saved' : 'Please look at this first'}
        >
          <ul className={classes.lines}>
            {[...new Set(conflicts.map(({ words }) => words))].map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </Alert>
      )}
      {needsWord(changes) && onAnyway && (
        <Checkbox
          label="It is to stay so"
          checked={anyway}
          onChange={(event) => onAnyway(event.currentTarget.checked)}
        />
      )}
      {consequences.length === 0 ? (
        <Text c="dimmed">Nobody who has booked is touched by it.</Text>
      ) : (
        <ul className={classes.consequences}>
          {consequences.map(({ sessionId, words, told, letGo, noLongerSuits }) => (
            <li key={sessionId}>
              <Text>{words}</Text>
              <div className={classes.marks}>
                <span>{times(told, 'person is told', 'people are told')}</span>
                {letGo > 0 && (
                  <Needs tone="stop">
                    {times(letGo, 'booking is let go', 'bookings are let go')}
                  </Needs>
                )}
                {noLongerSuits > 0 && (
                  <Needs tone="mind">
                    {times(
                      noLongerSuits,
                      'person whom it no longer suits',
                      'people whom it no longer suits',
                    )}
                  </Needs>
                )}
              </div>
            </li>
          ))}
        </ul>
      )}
    </Stack>
  );
}
