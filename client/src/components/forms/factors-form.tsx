import { Button, Group, Select, Stack, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { useAddFactor, useEndFactor } from '@/api/clients';
import type { HeldFactor } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { fullDate } from '@/components/time/days';
import { DayInput } from './day-input';
import classes from './factors-form.module.css';

interface Props {
  clientId: number;
  factors: readonly HeldFactor[];
  today: string;
}

/** What changes a class for her, each from a day and, once over, to a day. */
export function FactorsForm({ clientId, factors, today }: Props) {
  const now = factors.filter(({ to }) => to == null || to >= today);
  const over = factors.filter(({ to }) => to != null && to < today);
  const end = useEndFactor(clientId);
  return (
    <Stack>
      {now.length === 0 && <Text c="dimmed">Nothing noted.</Text>}
      <ul className={classes.list}>
        {now.map((factor) => (
          <li key={factor.id} className={classes.factor}>
            <div>
              <Text fw={600}>{factor.name}</Text>
              <Text size="sm" c="dimmed">
                since {fullDate(factor.from)}
              </Text>
            </div>
            <Button
              size="xs"
              variant="default"
              flex="none"
              loading={end.isPending && end.variables.factorId === factor.id}
              onClick={() => end.mutate({ factorId: factor.id, on: today })}
              aria-label={`No longer so: ${factor.name}`}
            >
              No longer so
            </Button>
          </li>
        ))}
      </ul>
      <Refused error={end.error} />
      <AddFactor clientId={clientId} today={today} held={now.map(({ code }) => code)} />
      {over.length > 0 && (
        <Text size="sm" c="dimmed">
          Over: {over.map(({ name, to }) => `${name} (to ${fullDate(to ?? today)})`).join(', ')}
        </Text>
      )}
    </Stack>
  );
}

interface AddProps {
  clientId: number;
  today: string;
  held: readonly string[];
}

function AddFactor({ clientId, today, held }: AddProps) {
  const { data: factors = [] } = useQuery(catalogueQueries.factors());
  const [code, setCode] = useState<string | null>(null);
  const [from, setFrom] = useState<string | null>(today);
  const add = useAddFactor(clientId);
  const offered = factors.filter((factor) => !held.includes(factor.code));
  const named = (condition: boolean) =>
    offered
      .filter(({ isCondition }) => isCondition === condition)
      .map(({ code: value, name: label }) => ({ value, label }));
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (code !== null && from !== null)
          add.mutate({ code, from, to: null }, { onSuccess: () => setCode(null) });
      }}
    >
      <Refused error={add.error} />
      <Group align="flex-end" gap="sm">
        <Select
          label="Add"
          placeholder="Type to search"
          searchable
          clearable
          clearButtonProps={{ 'aria-label': 'Clear the choice' }}
          value={code}
          onChange={setCode}
          flex="1 1 14rem"
          nothingFoundMessage="Nothing by that name"
          data={[
            { group: 'How the body is', items: named(false) },
            { group: 'Conditions', items: named(true) },
          ]}
        />
        <DayInput label="Since" maxDate={today} value={from} onChange={setFrom} w="11rem" />
        <Button type="submit" variant="default" loading={add.isPending} disabled={code === null}>
          Add
        </Button>
      </Group>
    </form>
  );
}
