import { Text, TextInput, Title } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { clientQueries } from '@/api/clients';
import { FoundPerson } from '@/components/find/found-person';
import { Asked, Empty, Lines } from '@/components/states/asked';
import classes from './owner.module.css';

export function PeoplePage() {
  const [text, setText] = useState('');
  const [asked] = useDebouncedValue(text.trim(), 200);
  const found = useQuery(clientQueries.find(asked));
  return (
    <div style={{ maxWidth: '46rem' }}>
      <Title mb="md">People</Title>
      <TextInput
        label="Name, phone or e-mail"
        size="md"
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
        mb="md"
      />
      {asked === '' ? (
        <Text c="dimmed">Type a few letters. Opening a card is noted in her record.</Text>
      ) : (
        <Asked query={found} waiting={<Lines count={3} height={56} />}>
          {(list) =>
            list.length === 0 ? (
              <Empty title="Nobody by that name, phone or e-mail" />
            ) : (
              <ul className={classes.list}>
                {list.map((client) => (
                  <li key={client.id}>
                    <Link
                      to="/studio/people/$clientId"
                      params={{ clientId: String(client.id) }}
                      className={classes.found}
                    >
                      <FoundPerson client={client} />
                    </Link>
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
