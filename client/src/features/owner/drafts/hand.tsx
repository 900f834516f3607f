import { Group, Kbd, Text } from '@mantine/core';
import type { TimetableConflict } from '@/api/types';
import { wordsOf } from '@/api/problem';
import { Needs } from '@/components/verdict/mark';
import { isSameSpot, spotOf } from './place';
import type { Holding } from './use-held';
import type { Named } from './words';
import classes from './board.module.css';

/** What is in hand, where it would be and what stands against it there; spoken too. */
export function Hand({ holding, named, last }: { holding: Holding; named: Named; last: string }) {
  const { held, conflicts, asking, refused } = holding;
  return (
    <div className={classes.hand} data-hand>
      {held === null ? (
        <Text size="sm" c="dimmed">
          Drag a session to another time, day or line; its lower edge changes how long it is. With
          the keyboard: <Kbd>Space</Kbd> takes a session in hand, <Kbd>Enter</Kbd> opens it.
        </Text>
      ) : (
        <>
          <Group justify="space-between" gap="xs">
            <Text fw={700}>{named.session(held.at)}</Text>
            {held.by === 'keys' && (
              <Text size="sm" c="dimmed">
                <Kbd>↑</Kbd> <Kbd>↓</Kbd> time, <Kbd>←</Kbd> <Kbd>→</Kbd> day, <Kbd>Shift</Kbd> with{' '}
                <Kbd>↑</Kbd> <Kbd>↓</Kbd> line, <Kbd>+</Kbd> <Kbd>-</Kbd> length, <Kbd>Enter</Kbd>{' '}
                puts it down, <Kbd>Esc</Kbd> takes it back
              </Text>
            )}
          </Group>
          {refused !== null ? (
            <Needs tone="stop">{wordsOf(refused)}</Needs>
          ) : asking ? (
            <Text size="sm" c="dimmed">
              Looking…
            </Text>
          ) : (
            <AgainstIt conflicts={conflicts ?? []} />
          )}
        </>
      )}
      <div role="status" aria-live="polite" className={classes.spoken}>
        {held === null
          ? last
          : asking
            ? ''
            : `${isSameSpot(held.at, spotOf(held.session)) ? 'In hand: ' : ''}${named.session(held.at)}. ${spokenOf(conflicts ?? [])}`}
      </div>
    </div>
  );
}

const spokenOf = (conflicts: readonly TimetableConflict[]) =>
  conflicts.length === 0
    ? 'Nothing stands against it.'
    : `Against it: ${conflicts.map(({ words }) => words).join(' ')}`;

interface Against {
  words: string;
  isHard?: boolean;
}

export function AgainstIt({ conflicts }: { conflicts: readonly Against[] }) {
  if (conflicts.length === 0)
    return (
      <Text size="sm" c="dimmed">
        Nothing stands against it here.
      </Text>
    );
  return (
    <ul className={classes.against}>
      {conflicts.map((conflict) => (
        <li key={conflict.words}>
          <Needs tone={conflict.isHard ? 'stop' : 'mind'}>
            {conflict.isHard ? 'Cannot be: ' : 'To think about: '}
            {conflict.words}
          </Needs>
        </li>
      ))}
    </ul>
  );
}
