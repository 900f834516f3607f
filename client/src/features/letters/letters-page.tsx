import { Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { letterQueries } from '@/api/letters';
import type { Letter } from '@/api/types';
import { keptAs, nextAfter } from '@/components/letters/words';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { SafetyNote } from '@/components/states/safety-note';
import { momentWords } from '@/components/time/zone';
import { OneLetter } from './one-letter';
import classes from './letters.module.css';

const route = getRouteApi('/inside/letters');

/** Letters nobody has read yet, the oldest first, each beside the form for what it says. */
export function LettersPage() {
  const waiting = useQuery(letterQueries.waiting());
  return (
    <>
      <Title>Letters to read</Title>
      <Text c="dimmed" mb="lg" maw="46rem">
        A letter counts once somebody has read it and noted what it asks for. Opening one is noted
        in her record.
      </Text>
      <Asked query={waiting} waiting={<Lines count={4} height={56} />}>
        {(list) => <Work list={list} />}
      </Asked>
      <SafetyNote />
    </>
  );
}

function Work({ list }: { list: readonly Letter[] }) {
  const { letter: chosen } = route.useSearch();
  const navigate = route.useNavigate();
  const letter = list.find(({ id }) => id === chosen);
  if (list.length === 0)
    return (
      <Empty title="No letter waits">
        Letters that clients send and that the desk files come here. Those read lately are under{' '}
        <Go to="/letters/read">Read lately</Go>.
      </Empty>
    );
  return (
    <div className={classes.work}>
      <nav aria-label="Letters waiting">
        <ul className={classes.waiting}>
          {list.map((one) => (
            <li key={one.id}>
              <Go
                to="/letters"
                search={{ letter: one.id }}
                activeOptions={{ exact: true, includeSearch: true }}
                activeProps={{ 'aria-current': 'page' }}
              >
                <strong>{one.name}</strong>
                <span>{momentWords(one.filedAt)}</span>
                <span>{keptAs(one)}</span>
              </Go>
            </li>
          ))}
        </ul>
      </nav>
      {letter !== undefined ? (
        <OneLetter
          key={letter.id}
          letter={letter}
          onDone={() => {
            void navigate({ search: { letter: nextAfter(list, letter.id)?.id } });
          }}
        />
      ) : chosen === undefined ? (
        <Empty title="Choose a letter">
          {list.length === 1 ? 'One waits' : `${list.length} wait`}, the oldest first.
        </Empty>
      ) : (
        <Empty title="This letter no longer waits">
          Somebody has read it, or it was taken back. It may stand under{' '}
          <Go to="/letters/read">Read lately</Go>.
        </Empty>
      )}
    </div>
  );
}
