import { Button, Group, Table, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMe } from '@/api/session';
import { payFile, staffQueries } from '@/api/staff';
import { DayInput } from '@/components/forms/day-input';
import { Asked, Empty } from '@/components/states/asked';
import { dayAndMonth } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { perWords } from './words';

/** Pay lines of a span: everybody's for the owner, her own for an instructor. */
export function PayView({ instructorId }: { instructorId?: number }) {
  const { today } = useMe();
  const [from, setFrom] = useState<string | null>(`${today.slice(0, 7)}-01`);
  const [to, setTo] = useState<string | null>(today);
  const span = { from: from ?? undefined, to: to ?? undefined };
  const everybody = useQuery({ ...staffQueries.pay(span), enabled: instructorId === undefined });
  const hers = useQuery({
    ...staffQueries.payOf(instructorId ?? 0, span),
    enabled: instructorId !== undefined,
  });
  return (
    <>
      <Group align="flex-end">
        <DayInput label="From" value={from} onChange={setFrom} />
        <DayInput label="To" value={to} onChange={setTo} />
      </Group>
      <Asked query={instructorId === undefined ? everybody : hers}>
        {(pay) =>
          pay.lines.length === 0 ? (
            <Empty title="No session was held in these days" />
          ) : (
            <>
              {pay.withoutRate > 0 && (
                <Text mt="md">
                  <Needs tone="mind">
                    {pay.withoutRate === 1
                      ? '1 session has no rate'
                      : `${pay.withoutRate} sessions have no rate`}
                  </Needs>{' '}
                  and is in no total.
                </Text>
              )}
              <Table.ScrollContainer minWidth={instructorId === undefined ? 640 : 300}>
                <Table>
                  <Table.Thead>
                    <Table.Tr>
                      <Table.Th>Session</Table.Th>
                      {instructorId === undefined && <Table.Th>Instructor</Table.Th>}
                      <Table.Th>Paid</Table.Th>
                      <Table.Th style={{ textAlign: 'right' }}>Amount</Table.Th>
                    </Table.Tr>
                  </Table.Thead>
                  <Table.Tbody>
                    {pay.lines.map((line) => (
                      <Table.Tr key={line.sessionId}>
                        <Table.Td>
                          {dayAndMonth(line.on)} {line.startsLocal}, {line.className} (
                          {line.minutes} min)
                        </Table.Td>
                        {instructorId === undefined && <Table.Td>{line.instructorName}</Table.Td>}
                        <Table.Td>
                          {line.per == null
                            ? 'No rate'
                            : `${line.rate} ${perWords[line.per]}${line.heads == null ? '' : `, ${line.heads} heads`}`}
                        </Table.Td>
                        <Table.Td style={{ textAlign: 'right' }}>
                          {line.amountText == null
                            ? 'not known'
                            : `${line.amountText} ${line.currency}`}
                        </Table.Td>
                      </Table.Tr>
                    ))}
                  </Table.Tbody>
                </Table>
              </Table.ScrollContainer>
              {instructorId === undefined &&
                pay.byInstructor.map(
                  ({ instructorId: id, instructorName, currency, sessions, amountText }) => (
                    <Text key={`${id} ${currency}`}>
                      {instructorName}: {amountText} {currency} for {sessions} sessions
                    </Text>
                  ),
                )}
              {pay.totals.map(({ currency, sessions, amountText }) => (
                <Text key={currency} fw={600}>
                  Total: {amountText} {currency} for {sessions} sessions
                </Text>
              ))}
              <Button
                component="a"
                href={payFile({ from: pay.from, to: pay.to }, instructorId)}
                variant="default"
                mt="md"
                download
              >
                Download as CSV
              </Button>
            </>
          )
        }
      </Asked>
    </>
  );
}
