import { Button, Group, TextInput } from '@mantine/core';
import { useDebouncedCallback } from '@mantine/hooks';
import { useState } from 'react';
import type { IncidentFilter } from '@/api/incidents';
import type { Incident } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { fullDate } from '@/components/time/days';

interface Props {
  filter: IncidentFilter;
  /** What is shown, for the names of whom and which session the page is narrowed to. */
  entries: readonly Incident[];
  onChange: (filter: IncidentFilter) => void;
}

/** By her name, by the day of the session; and what a link has narrowed the page to. */
export function Filters({ filter, entries, onChange }: Props) {
  const [typed, setTyped] = useState(filter.find ?? '');
  const search = useDebouncedCallback((text: string) => {
    const find = text.trim();
    onChange({ ...filter, find: find === '' ? undefined : find });
  }, 250);
  const her = entries.find(({ clientId }) => clientId === filter.client)?.name;
  const session = entries.find(({ sessionId }) => sessionId === filter.session);
  return (
    <>
      <Group align="flex-end" mb="sm">
        <TextInput
          label="Her name"
          value={typed}
          onChange={(event) => {
            setTyped(event.currentTarget.value);
            search(event.currentTarget.value);
          }}
        />
        <DayInput
          label="Day of the session"
          value={filter.on ?? null}
          onChange={(on) => onChange({ ...filter, on: on ?? undefined })}
        />
      </Group>
      <Group mb="lg" gap="xs">
        {filter.client !== undefined && (
          <Button
            size="xs"
            variant="default"
            onClick={() => onChange({ ...filter, client: undefined })}
          >
            Only {her ?? 'one client'}: show everybody’s
          </Button>
        )}
        {filter.session !== undefined && (
          <Button
            size="xs"
            variant="default"
            onClick={() => onChange({ ...filter, session: undefined })}
          >
            Only {sessionWords(session)}: show every session’s
          </Button>
        )}
      </Group>
    </>
  );
}

const sessionWords = (entry?: Incident) =>
  entry?.className == null || entry.sessionOn == null
    ? 'one session'
    : `${entry.className}, ${fullDate(entry.sessionOn)}`;
