import { Button, Group, Modal, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { accountQueries } from '@/api/accounts';
import type { Account } from '@/api/types';
import { AccountForm } from '@/components/forms/account-form';
import { Asked, Lines } from '@/components/states/asked';
import { RolesForm } from './roles-form';
import { rolesOf, roleWords } from './roles';
import classes from './owner.module.css';

/** Everybody who can sign in and is more than a client, with what each may do. */
export function Accounts() {
  const accounts = useQuery(accountQueries.list());
  const [adding, setAdding] = useState(false);
  return (
    <section aria-labelledby="accounts">
      <Group justify="space-between" mt="xl" mb="xs">
        <Title order={2} id="accounts">
          Accounts and what they may do
        </Title>
        <Button variant="default" onClick={() => setAdding(true)}>
          Add front desk account
        </Button>
      </Group>
      <Asked query={accounts} waiting={<Lines count={3} />}>
        {(list) => (
          <ul className={classes.list}>
            {list
              .filter(({ roles }) => roles !== 'client')
              .map((account) => (
                <One key={account.id} account={account} />
              ))}
          </ul>
        )}
      </Asked>
      <Modal
        opened={adding}
        onClose={() => setAdding(false)}
        title="Account for the front desk"
        size="md"
      >
        <AccountForm name="" email="" as="frontDesk" onDone={() => setAdding(false)} />
      </Modal>
    </section>
  );
}

function One({ account }: { account: Account }) {
  const [changing, setChanging] = useState(false);
  const { name, email } = account;
  return (
    <li className={classes.rule}>
      <strong>{name}</strong>
      <Group justify="space-between" gap="xs">
        <Text>
          {rolesOf(account)
            .map((role) => roleWords[role])
            .join(', ')}{' '}
          <Text component="span" c="dimmed">
            {email}
          </Text>
        </Text>
        <Button
          variant="default"
          size="xs"
          onClick={() => setChanging(true)}
          aria-label={`Change what ${name} may do`}
        >
          Change
        </Button>
      </Group>
      <Modal
        opened={changing}
        onClose={() => setChanging(false)}
        title={`What ${name} may do`}
        size="md"
      >
        <RolesForm account={account} onDone={() => setChanging(false)} />
      </Modal>
    </li>
  );
}
