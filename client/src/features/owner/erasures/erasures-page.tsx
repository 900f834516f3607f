import { Alert, Table, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { erasureQueries } from '@/api/records';
import type { ErasureList } from '@/api/types';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { fullDate } from '@/components/time/days';
import { momentWords } from '@/components/time/zone';

/** Who asked to be erased, what is set apart and until when, and what was erased when. */
export function ErasuresPage() {
  const list = useQuery(erasureQueries.list());
  return (
    <>
      <Title>Erasures</Title>
      <Text c="dimmed" mb="lg" maw="46rem">
        Clients who asked to be erased, and what was erased, without names. How long something is
        kept after that is chosen under Rules, Policies.
      </Text>
      <Asked query={list} waiting={<Lines count={6} />}>
        {(data) => (
          <>
            {data.filesLeft > 0 && (
              <Alert color="brick" variant="light" role="status" title="Files still to be deleted">
                {data.filesLeft === 1 ? 'One file' : `${data.filesLeft} files`} of erased letters
                could not be deleted from the disk. It is tried again every few minutes; if this
                stays, look whether the data folder can be written to.
              </Alert>
            )}
            <Wishes wishes={data.wishes} />
            <Done done={data.done} />
          </>
        )}
      </Asked>
    </>
  );
}

const Wishes = ({ wishes }: { wishes: ErasureList['wishes'] }) => (
  <section aria-labelledby="wishes">
    <Title order={2} id="wishes" mt="lg">
      Asked for
    </Title>
    {wishes.length === 0 ? (
      <Empty title="Nobody is waiting" />
    ) : (
      <Table.ScrollContainer minWidth={360}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Who</Table.Th>
              <Table.Th>Asked</Table.Th>
              <Table.Th>By</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {wishes.map(({ clientId, name, askedAt, byHerself }) => (
              <Table.Tr key={clientId}>
                <Table.Td>
                  <Go to="/studio/people/$clientId/erase" params={{ clientId: String(clientId) }}>
                    {name}
                  </Go>
                </Table.Td>
                <Table.Td>{momentWords(askedAt)}</Table.Td>
                <Table.Td>{byHerself ? 'Herself' : 'The studio'}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Table.ScrollContainer>
    )}
  </section>
);

const Done = ({ done }: { done: ErasureList['done'] }) => (
  <section aria-labelledby="done">
    <Title order={2} id="done" mt="lg">
      Carried out
    </Title>
    {done.length === 0 ? (
      <Empty title="Nothing was erased yet" />
    ) : (
      <Table.ScrollContainer minWidth={560}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Number</Table.Th>
              <Table.Th>When, by whom</Table.Th>
              <Table.Th>Erased at once</Table.Th>
              <Table.Th>Set apart</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {done.map((one) => (
              <Table.Tr key={one.id}>
                <Table.Td>{one.id}</Table.Td>
                <Table.Td>
                  {momentWords(one.doneAt)}, {one.doneBy}
                </Table.Td>
                <Table.Td>
                  Entries: {one.entries}. Files: {one.files}.
                </Table.Td>
                <Table.Td>
                  <Kept of={one} />
                </Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Table.ScrollContainer>
    )}
  </section>
);

const Kept = ({ of }: { of: ErasureList['done'][number] }) =>
  of.kept.length === 0 ? (
    'Nothing'
  ) : (
    <>
      {of.kept.map(({ part, title, lastDay, erasedAt }) => (
        <Text key={part}>
          {title}:{' '}
          {erasedAt == null
            ? `kept until ${fullDate(lastDay)}`
            : `erased for good on ${momentWords(erasedAt)}`}
        </Text>
      ))}
      {of.kept.some(({ erasedAt }) => erasedAt == null) && (
        <Go to="/studio/erasures/$erasureId" params={{ erasureId: String(of.id) }}>
          Read what is set apart
        </Go>
      )}
    </>
  );
