import { Text, Title, UnstyledButton } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { messageQueries } from '@/api/messages';
import type { KindOfMessage } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { Read } from './message-modal';
import classes from './messages.module.css';

/** Every kind of message with invented facts, before any is sent. */
export function KindsPage() {
  const kinds = useQuery(messageQueries.kinds());
  return (
    <>
      <Go to="/studio/messages">Back to messages</Go>
      <Title mt="xs">Kinds of message</Title>
      <Text c="dimmed" mb="lg" maw="46rem">
        Each with an invented example. Their hours and how many go out in a day are policies.
      </Text>
      <Asked query={kinds} waiting={<Lines count={8} />}>
        {(list) => <Kinds kinds={list} />}
      </Asked>
    </>
  );
}

function Kinds({ kinds }: { kinds: readonly KindOfMessage[] }) {
  const [chosen, setChosen] = useState(kinds[0]);
  return (
    <div className={classes.kinds}>
      <ul className={classes.choose} aria-label="Kinds">
        {kinds.map((kind) => (
          <li key={kind.kind}>
            <UnstyledButton
              className={classes.choice}
              aria-pressed={kind.kind === chosen?.kind}
              onClick={() => setChosen(kind)}
            >
              {kind.title}
            </UnstyledButton>
          </li>
        ))}
      </ul>
      {chosen && (
        <section aria-label={chosen.title} key={chosen.kind}>
          <Text c="dimmed" mb="xs">
            {chosen.essential
              ? 'Essential: it always comes.'
              : 'Whoever gets it can stop it, by the link in it or on her own page.'}
          </Text>
          <Read said={chosen} />
        </section>
      )}
    </div>
  );
}
