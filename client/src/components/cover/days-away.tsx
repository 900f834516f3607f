import { Button, Group, Text } from '@mantine/core';
import { useState } from 'react';
import { useAskForDays } from '@/api/cover';
import { useMe } from '@/api/session';
import { DayInput } from '@/components/forms/day-input';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';

interface Props {
  /** Whose days; her own when it is left out. */
  instructorId?: number | null;
}

/** Asks for cover of everything taught on some days, in one press. */
export function DaysAway({ instructorId = null }: Props) {
  const { today } = useMe();
  const [from, setFrom] = useState<string | null>(today);
  const [to, setTo] = useState<string | null>(today);
  const ask = useAskForDays();
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (from !== null && to !== null)
          ask.mutate(
            { from, to, instructorId },
            {
              onSuccess: ({ sessions }) =>
                tell(
                  sessions.length === 1
                    ? 'Cover is asked for 1 session.'
                    : `Cover is asked for ${sessions.length} sessions.`,
                ),
            },
          );
      }}
    >
      <Text size="sm" c="dimmed" mb="xs">
        Cover is asked for every session on these days, and they are noted as days away.
      </Text>
      <Group align="flex-end" gap="sm">
        <DayInput label="From" required value={from} onChange={setFrom} w="10rem" />
        <DayInput label="To" required value={to} onChange={setTo} w="10rem" />
        <Button type="submit" loading={ask.isPending} disabled={from === null || to === null}>
          Ask for cover of these days
        </Button>
      </Group>
      <Refused error={ask.error} />
    </form>
  );
}
