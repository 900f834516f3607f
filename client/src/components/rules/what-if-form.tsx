import { Group, MultiSelect, NumberInput, Select, Stack } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { catalogueQueries } from '@/api/catalogue';
import type { BirthMode } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { birthModes, codesOf, joined, type Asking } from './question';

const modeWords: Record<BirthMode, string> = {
  vaginal: 'Vaginal',
  assisted: 'Assisted',
  caesarean: 'Caesarean',
  unknown: 'Not said',
};

interface Props {
  asking: Asking;
  onAsk: (asking: Asking) => void;
  today: string;
}

/** The question stands in the address, so it can be sent to somebody; it is about nobody. */
export function WhatIfForm({ asking, onAsk, today }: Props) {
  const { data: stages = [] } = useQuery(catalogueQueries.stages());
  const { data: factors = [] } = useQuery(catalogueQueries.factors());
  const { data: classes = [] } = useQuery(catalogueQueries.classes());
  const { data: catalogue } = useQuery(catalogueQueries.movementsWithRules());
  const born = stages.some(
    ({ code, countsFrom }) => code === asking.stage && countsFrom === 'birth',
  );
  const named = (condition: boolean) =>
    factors
      .filter(({ isCondition }) => isCondition === condition)
      .map(({ code, name }) => ({ value: code, label: name }));
  return (
    <Stack gap="sm">
      <Group align="flex-end" gap="sm">
        <Select
          label="Stage"
          description="Its first day is meant"
          placeholder={asking.due === undefined ? 'Choose a stage' : 'By the due date'}
          clearable
          clearButtonProps={{ 'aria-label': 'Clear the stage' }}
          data={stages.map(({ code, name }) => ({ value: code, label: name }))}
          value={asking.stage ?? null}
          onChange={(stage) =>
            onAsk({ ...asking, stage: stage ?? undefined, due: undefined, birth: undefined })
          }
          flex="1 1 12rem"
        />
        <DayInput
          label="or a due date"
          value={asking.due ?? null}
          onChange={(due) =>
            onAsk({
              ...asking,
              due: due ?? undefined,
              ...(due !== null && { stage: undefined, birth: undefined }),
            })
          }
          flex="1 1 10rem"
        />
        <DayInput
          label="On the day"
          value={asking.on ?? today}
          onChange={(on) => onAsk({ ...asking, on: on === today ? undefined : (on ?? undefined) })}
          flex="1 1 10rem"
        />
        {born && (
          <Select
            label="Birth"
            data={birthModes.map((mode) => ({ value: mode, label: modeWords[mode] }))}
            allowDeselect={false}
            value={asking.birth ?? 'unknown'}
            onChange={(mode) => onAsk({ ...asking, birth: birthModes.find((one) => one === mode) })}
            flex="1 1 9rem"
          />
        )}
        <Select
          label="Class"
          data={[
            { value: '', label: 'All movements' },
            ...classes.map(({ id, name }) => ({ value: String(id), label: name })),
          ]}
          allowDeselect={false}
          value={asking.class === undefined ? '' : String(asking.class)}
          onChange={(id) =>
            onAsk({ ...asking, class: id === null || id === '' ? undefined : Number(id) })
          }
          flex="1 1 12rem"
        />
      </Group>
      <Group align="flex-end" gap="sm">
        <MultiSelect
          label="What is known of her"
          placeholder="Type to search"
          searchable
          clearable
          clearButtonProps={{ 'aria-label': 'Nothing known' }}
          nothingFoundMessage="Nothing by that name"
          data={[
            { group: 'How the body is', items: named(false) },
            { group: 'Conditions', items: named(true) },
          ]}
          value={codesOf(asking.factors)}
          onChange={(codes) => onAsk({ ...asking, factors: joined(codes) })}
          flex="2 1 16rem"
        />
        <MultiSelect
          label="A letter leaves out"
          placeholder="Positions and traits"
          searchable
          clearable
          clearButtonProps={{ 'aria-label': 'Nothing left out' }}
          data={(catalogue?.restrictions ?? []).map(({ code, name }) => ({
            value: code,
            label: name,
          }))}
          value={codesOf(asking.leaveOut)}
          onChange={(codes) => onAsk({ ...asking, leaveOut: joined(codes) })}
          flex="2 1 16rem"
        />
        <NumberInput
          label="Most effort"
          placeholder="of 10"
          min={0}
          max={10}
          allowDecimal={false}
          clampBehavior="strict"
          value={asking.effort ?? ''}
          onChange={(effort) =>
            onAsk({ ...asking, effort: typeof effort === 'number' ? effort : undefined })
          }
          flex="0 1 7rem"
        />
      </Group>
    </Stack>
  );
}
