import { Checkbox, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { useChangeRoles } from '@/api/accounts';
import { Problem } from '@/api/problem';
import type { Account } from '@/api/types';
import { SubmitRow } from '@/components/forms/submit-row';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { isTied, rolesOf, rolesWith, roleWords } from './roles';

const choices = [
  { value: 'owner', label: 'Owner', description: 'Everything, all health records included.' },
  {
    value: 'reviewer',
    label: 'Reads letters',
    description: 'Reads clearance letters and notes what they ask for.',
  },
  {
    value: 'frontDesk',
    label: 'Front desk',
    description: 'Books, cancels, checks in; sees no condition and no letter.',
  },
] as const;

/** Gives roles and takes them. */
export function RolesForm({ account, onDone }: { account: Account; onDone: () => void }) {
  const held = rolesOf(account);
  const [given, setGiven] = useState<string[]>(held.filter((role) => !isTied(role)));
  const change = useChangeRoles(account.id);
  const about = change.error instanceof Problem ? change.error.fields.roles : undefined;
  const wanted = rolesWith(account, given);
  const stays = held.filter(isTied).map((role) => roleWords[role]);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void change.mutateAsync(wanted).then(
          () => {
            tell(`Saved. Pages that ${account.name} has open follow within a minute.`);
            onDone();
          },
          () => undefined,
        );
      }}
    >
      {about === undefined && <Refused error={change.error} />}
      <Checkbox.Group label="May be" value={given} onChange={setGiven} error={about}>
        <Stack gap="sm" my="xs">
          {choices.map((choice) => (
            <Checkbox key={choice.value} {...choice} />
          ))}
        </Stack>
      </Checkbox.Group>
      {stays.length > 0 && (
        <Text size="sm" c="dimmed">
          This account is {stays.join(' and ')} as well, and stays so.
        </Text>
      )}
      {wanted.length === 0 && (
        <Text size="sm" c="dimmed">
          Somebody who can sign in has at least one role.
        </Text>
      )}
      <SubmitRow
        label="Save"
        busy={change.isPending}
        disabled={wanted.length === 0}
        onCancel={onDone}
      />
    </form>
  );
}
