import { Select, Text } from '@mantine/core';
import { IconSearch } from '@tabler/icons-react';
import { useMemo, useState } from 'react';
import type { Movement } from '@/api/types';
import { found } from './catalogue';

interface Props {
  movements: readonly Movement[];
  onAdd: (movement: Movement) => void;
}

/** Finds a movement by its name, group, position or what is needed for it; a click or Enter adds it. */
export function MovementSearch({ movements, onAdd }: Props) {
  const [typed, setTyped] = useState('');
  const data = useMemo(() => {
    const hits = found(movements, typed);
    const groups = [...new Set(hits.map(({ groupName }) => groupName))];
    return groups.map((group) => ({
      group,
      items: hits
        .filter(({ groupName }) => groupName === group)
        .map(({ code, name }) => ({ value: code, label: name })),
    }));
  }, [movements, typed]);
  return (
    <Select
      label="Add a movement"
      description="By name, group, position or equipment; arrows choose, Enter adds."
      placeholder="For example squat, stretch, chair"
      leftSection={<IconSearch size={18} aria-hidden />}
      rightSection={null}
      searchable
      selectFirstOptionOnChange
      nothingFoundMessage="No movement is called so, and none needs it."
      data={data}
      // Searched above: by more than the label.
      filter={({ options }) => options}
      searchValue={typed}
      onSearchChange={setTyped}
      value={null}
      maxDropdownHeight={360}
      comboboxProps={{ shadow: 'md' }}
      renderOption={({ option }) => (
        <Found movement={movements.find(({ code }) => code === option.value)} />
      )}
      onOptionSubmit={(code) => {
        const movement = movements.find((one) => one.code === code);
        setTyped('');
        if (movement !== undefined) onAdd(movement);
      }}
    />
  );
}

const Found = ({ movement }: { movement?: Movement }) =>
  movement === undefined ? null : (
    <div>
      <Text component="span" fw={600}>
        {movement.name}
      </Text>{' '}
      <Text component="span" size="sm">
        {movement.positionName.toLowerCase()}, effort {movement.effort} of 10
        {movement.equipment.length > 0 && `, with ${movement.equipment.join(', ')}`}
      </Text>
      <Text size="sm">{movement.cue}</Text>
    </div>
  );
