import { Text, TextInput, Title } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { letterQueries } from '@/api/letters';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { momentWords } from '@/components/time/zone';
import classes from './letters.module.css';

/** People by name, among those who have handed in a letter; nothing else of them. */
export function FindPage() {
  const [text, setText] = useState('');
  const [asked] = useDebouncedValue(text.trim(), 200);
  const found = useQuery(letterQueries.people(asked));
  return (
    <div className={classes.person}>
      <Title mb="md">Find letters by name</Title>
      <TextInput
        label="Her name"
        size="md"
        mb="md"
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      {asked === '' ? (
        <Text c="dimmed">
          Everybody who has handed in a letter is found here. Opening her letters is noted in her
          record.
        </Text>
      ) : (
        <Asked query={found} waiting={<Lines count={3} height={56} />}>
          {(list) =>
            list.length === 0 ? (
              <Empty title="No letters from anybody by that name">
                A letter that came on paper is found once the front desk has filed it.
              </Empty>
            ) : (
              <ul className={classes.read}>
                {list.map(({ id, name, called, lastFiledAt }) => (
                  <li key={id}>
                    <Go
                      to="/letters/people/$clientId"
                      params={{ clientId: String(id) }}
                      fw={600}
                      c="inherit"
                    >
                      {name}
                    </Go>
                    {called !== name.split(' ')[0] && (
                      <Text component="span" c="dimmed">{` “${called}”`}</Text>
                    )}
                    <Text size="sm" c="dimmed">
                      Last letter handed in {momentWords(lastFiledAt)}
                    </Text>
                  </li>
                ))}
              </ul>
            )
          }
        </Asked>
      )}
    </div>
  );
}
