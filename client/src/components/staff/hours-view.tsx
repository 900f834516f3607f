import { Table, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { staffQueries } from '@/api/staff';
import { Asked } from '@/components/states/asked';
import { dayAndMonth, monthAndYear } from '@/components/time/days';
import { Needs } from '@/components/verdict/mark';
import { hoursWords } from './words';

/** Hours taught by week and month, across all locations, beside what was agreed. */
export function HoursView({ instructorId }: { instructorId: number }) {
  const hours = useQuery(staffQueries.hours(instructorId));
  return (
    <Asked query={hours}>
      {({ weeklyMinutesMost: most, weeks, months }) => (
        <>
          <Text>
            {most == null
              ? 'No bound for a week was agreed.'
              : `At most ${hoursWords(most)} in a week were agreed.`}
          </Text>
          {(
            [
              ['By week', weeks],
              ['By month', months],
            ] as const
          ).map(([title, spans]) => (
            <section key={title} aria-label={title}>
              <Title order={4} mt="md">
                {title}
              </Title>
              <Table>
                <Table.Thead>
                  <Table.Tr>
                    <Table.Th>{title === 'By week' ? 'Week' : 'Month'}</Table.Th>
                    <Table.Th>Taught</Table.Th>
                    <Table.Th>To come</Table.Th>
                  </Table.Tr>
                </Table.Thead>
                <Table.Tbody>
                  {spans.map(({ name, from, to, heldMinutes, aheadMinutes }) => (
                    <Table.Tr key={name}>
                      <Table.Td>
                        {title === 'By week'
                          ? `${dayAndMonth(from)} to ${dayAndMonth(to)}`
                          : monthAndYear(from)}
                        {title === 'By week' &&
                          most != null &&
                          heldMinutes + aheadMinutes > most && (
                            <div>
                              <Needs tone="mind">
                                over by {hoursWords(heldMinutes + aheadMinutes - most)}
                              </Needs>
                            </div>
                          )}
                      </Table.Td>
                      <Table.Td>{hoursWords(heldMinutes)}</Table.Td>
                      <Table.Td>{aheadMinutes === 0 ? '' : hoursWords(aheadMinutes)}</Table.Td>
                    </Table.Tr>
                  ))}
                </Table.Tbody>
              </Table>
            </section>
          ))}
        </>
      )}
    </Asked>
  );
}
