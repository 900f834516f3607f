import { Combobox, Kbd, Loader, TextInput, useCombobox } from '@mantine/core';
import { useDebouncedValue } from '@mantine/hooks';
import { IconSearch } from '@tabler/icons-react';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { clientQueries } from '@/api/clients';
import { useShortcutsOn } from '@/components/keyboard/shortcut';
import { findInput, type FindInput } from './find-input';
import { FoundPerson } from './found-person';

const settled = 150;

interface Props extends FindInput {
  /** Whether the plain input that stood here while this was loading was being typed in. */
  takesOver: boolean;
  onOpen: (clientId: number) => void;
}

/** Finds a client by name, phone or e-mail: arrows choose, Enter opens. */
export function FindBox({ ref: input, text, onText: setText, takesOver, onOpen }: Props) {
  const queries = useQueryClient();
  const [asked] = useDebouncedValue(text.trim(), settled);
  const [shortcuts] = useShortcutsOn();
  const { data: found = [], isFetching } = useQuery(clientQueries.find(asked));
  const combobox = useCombobox({ onDropdownClose: () => combobox.resetSelectedOption() });
  useEffect(() => {
    if (takesOver) input.current?.focus();
  }, [takesOver, input]);

  const current = asked === text.trim();

  const open = (clientId: number) => {
    setText('');
    combobox.closeDropdown();
    input.current?.blur();
    onOpen(clientId);
  };

  // Enter pressed faster than the answer came: the first of the answer to what stands in the box.
  const openFirst = async () => {
    const [first] = await queries.query(clientQueries.find(text.trim()));
    if (first) open(first.id);
  };

  return (
    <Combobox store={combobox} onOptionSubmit={(id) => open(Number(id))} withinPortal={false}>
      <Combobox.Target>
        <TextInput
          ref={input}
          {...findInput}
          leftSection={<IconSearch size={18} aria-hidden />}
          rightSection={
            isFetching ? <Loader size="xs" /> : shortcuts && text === '' ? <Kbd>/</Kbd> : null
          }
          value={text}
          onChange={(event) => {
            setText(event.currentTarget.value);
            combobox.openDropdown();
            combobox.updateSelectedOptionIndex();
          }}
          onFocus={() => {
            if (text !== '') combobox.openDropdown();
          }}
          onBlur={() => combobox.closeDropdown()}
          onKeyDown={(event) => {
            if (event.key === 'Escape') setText('');
            if (event.key !== 'Enter' || text.trim() === '') return;
            if (current && combobox.getSelectedOptionIndex() >= 0) return;
            event.preventDefault();
            void openFirst();
          }}
        />
      </Combobox.Target>
      <Combobox.Dropdown hidden={asked === ''}>
        <Combobox.Options aria-label="Clients found">
          {found.map((client) => (
            <Combobox.Option key={client.id} value={String(client.id)}>
              <FoundPerson client={client} />
            </Combobox.Option>
          ))}
          {found.length === 0 && !isFetching && (
            <Combobox.Empty>Nobody by that name, phone or e-mail.</Combobox.Empty>
          )}
        </Combobox.Options>
      </Combobox.Dropdown>
    </Combobox>
  );
}
