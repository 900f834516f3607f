import { Anchor, Button, Group, Text } from '@mantine/core';
import { useState } from 'react';
import { useSettleCover } from '@/api/cover';
import type { Candidate, Cover } from '@/api/types';
import { dialled, standingWords } from '@/components/cover/words';
import { tell, tellRefused } from '@/components/states/told';
import { Needs } from '@/components/verdict/mark';
import classes from '@/components/cover/cover.module.css';

const first = 3;

/** Everybody for one session, ranked, each with her reasons; those who cannot are folded away with theirs. */
export function Candidates({ cover }: { cover: Cover }) {
  const [all, setAll] = useState(false);
  const might = cover.candidates.filter(({ standing }) => standing !== 'notFree');
  const cannot = cover.candidates.filter(({ standing }) => standing === 'notFree');
  return (
    <>
      {might.length === 0 && (
        <Text fw={600} mt="sm">
          Nobody can take it as things stand.
        </Text>
      )}
      <ol className={classes.list}>
        {(all ? might : might.slice(0, first)).map((her) => (
          <One key={her.instructorId} cover={cover} her={her} />
        ))}
      </ol>
      {might.length > first && !all && (
        <Button variant="subtle" size="xs" onClick={() => setAll(true)}>
          {might.length - first} more who might
        </Button>
      )}
      {cannot.length > 0 && (
        <details open={might.length === 0}>
          <summary>
            {cannot.length === 1 ? '1 cannot, and why' : `${cannot.length} cannot, and why`}
          </summary>
          <ul className={classes.reasons}>
            {cannot.map(({ instructorId, against }) => (
              <li key={instructorId}>{against.join(' ')}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function One({ cover, her }: { cover: Cover; her: Candidate }) {
  const settle = useSettleCover();
  const anyway = her.standing !== 'free';
  return (
    <li className={classes.candidate}>
      <div>
        <Group gap="xs">
          <strong>{her.name}</strong>
          {her.standing === 'free' ? (
            <Text size="sm">{her.answer === 'can' ? 'Says that she can' : standingWords.free}</Text>
          ) : (
            <Needs tone="mind">{standingWords[her.standing]}</Needs>
          )}
          {her.phone != null && her.phone !== '' && (
            <Anchor size="sm" href={dialled(her.phone)}>
              {her.phone}
            </Anchor>
          )}
        </Group>
        <ul className={classes.reasons}>
          {[...her.against, ...her.reasons].map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      </div>
      <Button
        size="xs"
        variant={anyway ? 'default' : 'filled'}
        loading={settle.isPending}
        aria-label={`${anyway ? 'Accept that, and give it to' : 'Give it to'} ${her.name}: ${cover.session.className}`}
        onClick={() =>
          settle.mutate(
            {
              covers: [{ sessionId: cover.session.id, instructorId: her.instructorId }],
              anyway,
            },
            {
              onSuccess: () =>
                tell(`${her.name} teaches ${cover.session.className}. Everybody is told.`),
              onError: tellRefused,
            },
          )
        }
      >
        {anyway ? 'Accept and give' : 'Give'}
      </Button>
    </li>
  );
}
