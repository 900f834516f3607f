import { Group, Text } from '@mantine/core';
import type { ClientFound } from '@/api/types';

/** Enough to tell two people of one name apart. */
export function FoundPerson({ client }: { client: ClientFound }) {
  return (
    <div>
      <Text component="span" fw={600}>
        {client.name}
      </Text>
      {client.called !== client.name.split(' ')[0] && (
        <Text component="span" c="dimmed">
          {` “${client.called}”`}
        </Text>
      )}
      <Group gap="md" c="dimmed" fz="sm">
        <span>{client.phone}</span>
        <span>{client.email}</span>
      </Group>
    </div>
  );
}
