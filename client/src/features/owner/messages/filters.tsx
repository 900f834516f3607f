import { Group, Select, TextInput } from '@mantine/core';
import { useDebouncedCallback } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { messageQueries, type MessageFilter } from '@/api/messages';
import { statusChoices } from '@/components/messages/filter';

interface Props {
  filter: MessageFilter;
  onChange: (filter: MessageFilter) => void;
}

/** By how far it has come, by what it is about, by whom it is for. */
export function Filters({ filter, onChange }: Props) {
  const [typed, setTyped] = useState(filter.find ?? '');
  const { data: kinds } = useQuery(messageQueries.kinds());
  const search = useDebouncedCallback((text: string) => {
    const find = text.trim();
    onChange({ ...filter, find: find === '' ? undefined : find });
  }, 250);
  return (
    <Group align="flex-end" mb="lg">
      <TextInput
        label="Name or e-mail"
        value={typed}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
          search(event.currentTarget.value);
        }}
      />
      <Select
        label="State"
        placeholder="Any"
        clearable
        clearButtonProps={{ 'aria-label': 'Any state' }}
        data={statusChoices}
        value={filter.status ?? null}
        onChange={(status) => onChange({ ...filter, status: status ?? undefined })}
      />
      <Select
        label="About"
        placeholder="Anything"
        clearable
        clearButtonProps={{ 'aria-label': 'About anything' }}
        w={260}
        data={kinds?.map(({ kind, title }) => ({ value: kind, label: title })) ?? []}
        value={filter.kind ?? null}
        onChange={(kind) => onChange({ ...filter, kind: kind ?? undefined })}
      />
    </Group>
  );
}
