import { Combobox, ScrollArea, Text, TextInput, useCombobox } from '@mantine/core';
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
  const hits = useMemo(() => found(movements, typed), [movements, typed]);
  const groups = [...new Set(hits.map(({ groupName }) => groupName))];
  const combobox = useCombobox({ onDropdownClose: () => combobox.resetSelectedOption() });

  const add = (movement: Movement | undefined) => {
    if (movement === undefined) return;
    setTyped('');
    combobox.closeDropdown();
    onAdd(movement);
  };

  return (
    <Combobox
      store={combobox}
      shadow="md"
      onOptionSubmit={(code) => add(hits.find((movement) => movement.code === code))}
    >
      <Combobox.Target withExpandedAttribute>
        <TextInput
          label="Add a movement"
          description="By name, group, position or equipment; arrows choose, Enter adds."
          placeholder="For example squat, stretch, chair"
          leftSection={<IconSearch size={18} aria-hidden />}
          autoComplete="off"
          value={typed}
          onChange={(event) => {
            setTyped(event.currentTarget.value);
            combobox.openDropdown();
            combobox.updateSelectedOptionIndex();
          }}
          onClick={() => combobox.openDropdown()}
          onBlur={() => combobox.closeDropdown()}
          onKeyDown={(event) => {
            if (event.key === 'Escape') setTyped('');
            if (event.key !== 'Enter' || combobox.getSelectedOptionIndex() >= 0) return;
            event.preventDefault();
            if (typed.trim() !== '') add(hits[0]);
          }}
        />
      </Combobox.Target>
      <Combobox.Dropdown>
        <Combobox.Options aria-label="Movements found">
          <ScrollArea.Autosize mah={360} type="auto">
            {groups.map((group) => (
              <Combobox.Group key={group} label={group}>
                {hits
                  .filter(({ groupName }) => groupName === group)
                  .map((movement) => (
                    <Combobox.Option key={movement.code} value={movement.code}>
                      <Found movement={movement} />
                    </Combobox.Option>
                  ))}
              </Combobox.Group>
            ))}
            {hits.length === 0 && (
              <Combobox.Empty>No movement is called so, and none needs it.</Combobox.Empty>
            )}
          </ScrollArea.Autosize>
        </Combobox.Options>
      </Combobox.Dropdown>
    </Combobox>
  );
}

const Found = ({ movement }: { movement: Movement }) => (
  <>
    <Text component="span" fw={600}>
      {movement.name}
    </Text>{' '}
    <Text component="span" size="sm">
      {movement.positionName.toLowerCase()}, effort {movement.effort} of 10
      {movement.equipment.length > 0 && `, with ${movement.equipment.join(', ')}`}
    </Text>
    <Text size="sm">{movement.cue}</Text>
  </>
);
