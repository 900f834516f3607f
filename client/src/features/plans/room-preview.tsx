import { Table, Text, Title } from '@mantine/core';
import type { UseQueryResult } from '@tanstack/react-query';
import type { PlanPreview, PreviewedPerson } from '@/api/types';
import { Lines, Refused } from '@/components/states/asked';
import { VerdictMark } from '@/components/verdict/mark';
import { movementWords } from '@/components/verdict/words';
import classes from './plans.module.css';

interface Props {
  query: UseQueryResult<PlanPreview>;
  /** The answer, when it is about the session that is chosen. */
  seen?: PlanPreview;
  isEmpty: boolean;
}

/** What the draft means for each person booked. */
export function RoomPreview({ query, seen, isEmpty }: Props) {
  if (isEmpty) return null;
  if (seen === undefined)
    return query.isError ? <Refused error={query.error} /> : <Lines count={4} height={32} />;
  if (seen.people.length === 0)
    return <Text c="dimmed">Nobody is booked yet, so the plan suits everybody there is.</Text>;
  const changed = seen.people.filter(({ before, after }) => before !== after);
  return (
    <section aria-labelledby="room" aria-busy={query.isFetching}>
      <Refused error={query.error} />
      <Title order={2} id="room" mb={4}>
        Minutes for each person
      </Title>
      {changed.length > 0 && <Fits people={changed} />}
      <Table className={classes.people} verticalSpacing={4} horizontalSpacing={6}>
        <Table.Thead>
          <Table.Tr>
            <Table.Th scope="col">Name</Table.Th>
            <Table.Th scope="col">{movementWords.asTaught}</Table.Th>
            <Table.Th scope="col">{movementWords.adapted}</Table.Th>
            <Table.Th scope="col">{movementWords.replaced}</Table.Th>
            <Table.Th scope="col">{movementWords.leftOut}</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {seen.people.map(({ clientId, called, share }) => (
            <Table.Tr key={clientId}>
              <Table.Th scope="row">{called}</Table.Th>
              <Table.Td>{share.asTaught}</Table.Td>
              <Table.Td>{share.adapted}</Table.Td>
              <Table.Td>{share.replaced}</Table.Td>
              <Table.Td>{share.leftOut}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </section>
  );
}

const Fits = ({ people }: { people: readonly PreviewedPerson[] }) => (
  <ul className={classes.fits} aria-label="For whom the session changes">
    {people.map(({ clientId, called, before, after }) => (
      <li key={clientId}>
        {called}: <VerdictMark verdict={before} /> →{' '}
        <VerdictMark verdict={after} pressing={after === 'notSuitable'} />
      </li>
    ))}
  </ul>
);
