import { Button, Group, Text } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useQuery } from '@tanstack/react-query';
import { staffQueries, useAddLeave, useWithdrawLeave } from '@/api/staff';
import type { InstructorPage } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { showRefusal } from '@/components/forms/refusals';
import { Refused } from '@/components/states/asked';
import { fullDate } from '@/components/time/days';
import { HerSessions } from './her-sessions';
import classes from './staff.module.css';

export function Leave({
  instructorId,
  leave,
}: {
  instructorId: number;
  leave: InstructorPage['leave'];
}) {
  const add = useAddLeave(instructorId);
  const withdraw = useWithdrawLeave(instructorId);
  const form = useForm<{ from: string | null; to: string | null }>({
    initialValues: { from: null, to: null },
    validate: {
      from: (day) => (day === null ? 'From which day?' : null),
      to: (day) => (day === null ? 'Until which day?' : null),
    },
  });
  const { from, to } = form.values;
  const inIt = useQuery({
    ...staffQueries.sessions(instructorId, { from: from ?? undefined, to: to ?? undefined }),
    enabled: from !== null && to !== null && from <= to,
  }).data;
  return (
    <>
      {leave.length === 0 && <Text c="dimmed">No days away.</Text>}
      <ul className={classes.rows}>
        {leave.map((days) => (
          <li key={days.id}>
            <span>
              {fullDate(days.from)}
              {days.to !== days.from && ` to ${fullDate(days.to)}`}
            </span>
            <Button
              size="sm"
              variant="default"
              loading={withdraw.isPending}
              onClick={() => withdraw.mutate(days.id)}
              aria-label={`Withdraw the leave from ${fullDate(days.from)}`}
            >
              Withdraw
            </Button>
            {days.sessions.length > 0 && (
              <div style={{ flexBasis: '100%' }}>
                <Text size="sm">Sessions on these days that need somebody else:</Text>
                <HerSessions sessions={days.sessions} />
              </div>
            )}
          </li>
        ))}
      </ul>
      <Refused error={withdraw.error} />
      <form
        onSubmit={form.onSubmit(({ from: first, to: last }) => {
          if (first === null || last === null) return;
          add.mutate(
            { from: first, to: last },
            { onSuccess: () => form.reset(), onError: showRefusal(form) },
          );
        })}
      >
        <Group align="flex-start" mt="md">
          <DayInput label="First day away" {...form.getInputProps('from')} />
          <DayInput label="Last day away" {...form.getInputProps('to')} />
        </Group>
        {inIt !== undefined && (
          <div role="status">
            {inIt.length === 0 ? (
              <Text mt="sm">No session falls on these days.</Text>
            ) : (
              <>
                <Text mt="sm">These sessions fall on those days and will need somebody else:</Text>
                <HerSessions sessions={inIt} />
              </>
            )}
          </div>
        )}
        <Refused error={add.error} />
        <Button type="submit" mt="md" loading={add.isPending}>
          Enter days away
        </Button>
      </form>
    </>
  );
}
