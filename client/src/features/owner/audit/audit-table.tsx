import { Table, Text } from '@mantine/core';
import type { AuditEntry } from '@/api/types';
import { Go } from '@/components/states/go';
import { momentWords } from '@/components/time/zone';
import { asWhat, partOf } from './words';

export const AuditTable = ({ entries }: { entries: readonly AuditEntry[] }) => (
  <Table.ScrollContainer
    minWidth="46rem"
    type="native"
    role="region"
    tabIndex={0}
    aria-label="Entries, the newest first"
  >
    <Table verticalSpacing="xs">
      <Table.Thead>
        <Table.Tr>
          <Table.Th>When</Table.Th>
          <Table.Th>Who</Table.Th>
          <Table.Th>Did</Table.Th>
          <Table.Th>Which part</Table.Th>
          <Table.Th>Whose</Table.Th>
          <Table.Th>Entry</Table.Th>
        </Table.Tr>
      </Table.Thead>
      <Table.Tbody>
        {entries.map((entry) => (
          <Table.Tr key={entry.id}>
            <Table.Td>{momentWords(entry.at)}</Table.Td>
            <Table.Td>
              {entry.who}
              <Text component="span" c="dimmed">{` · ${asWhat(entry)}`}</Text>
            </Table.Td>
            <Table.Td fw={entry.act === 'change' ? 600 : undefined}>
              {entry.act === 'change' ? 'changed' : 'read'}
            </Table.Td>
            <Table.Td>{partOf(entry)}</Table.Td>
            <Table.Td>
              {entry.whose == null ? (
                <Text c="dimmed">a client who was erased</Text>
              ) : (
                <Go to="/studio/audit" search={{ client: entry.clientId }} c="inherit">
                  {entry.whose}
                </Go>
              )}
            </Table.Td>
            <Table.Td c="dimmed">{entry.id}</Table.Td>
          </Table.Tr>
        ))}
      </Table.Tbody>
    </Table>
  </Table.ScrollContainer>
);
