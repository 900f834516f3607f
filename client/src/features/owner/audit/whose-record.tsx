import { Button, Group, Select } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { clientQueries } from '@/api/clients';

interface Props {
  client?: number;
  /** Her name, as far as the trail has told it. */
  name?: string;
  onChange: (client?: number) => void;
}

/** One person's trail instead of everybody's. */
export function WhoseRecord({ client, name, onChange }: Props) {
  const [text, setText] = useState('');
  const [asked] = useDebouncedValue(text.trim(), 200);
  const { data: found = [] } = useQuery(clientQueries.find(asked));
  const people = found.map(({ id, name: called, phone }) => ({
    value: String(id),
    label: phone === '' ? called : `${called}, ${phone}`,
  }));
  const chosen = client === undefined ? null : String(client);
  const known = chosen === null || people.some(({ value }) => value === chosen);
  return (
    <Group align="flex-end" mb="lg">
      <Select
        label="Whose record"
        description="Everybody’s while nobody is chosen."
        placeholder="Name, phone or e-mail"
        w="26rem"
        maw="100%"
        data={known ? people : [{ value: chosen, label: name ?? `Client ${chosen}` }, ...people]}
        // The server has found them already.
        filter={({ options }) => options}
        value={chosen}
        onChange={(value) => onChange(value === null ? undefined : Number(value))}
        onSearchChange={setText}
        searchable
        nothingFoundMessage={asked === '' ? undefined : 'Nobody by that name, phone or e-mail.'}
      />
      {chosen !== null && (
        <Button variant="default" onClick={() => onChange(undefined)}>
          Everybody’s record
        </Button>
      )}
    </Group>
  );
}
