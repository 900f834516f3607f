import { Button, Group, Modal, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { accountQueries } from '@/api/accounts';
import type { Role } from '@/api/types';
import { AccountForm } from '@/components/forms/account-form';
import { Asked, Lines } from '@/components/states/asked';
import classes from './owner.module.css';

const roleWords: Record<Role, string> = {
  owner: 'owner',
  reviewer: 'reads letters',
  frontDesk: 'front desk',
  instructor: 'instructor',
  client: 'client',
};

/** Owner and front desk accounts; instructors have theirs above, clients on their cards. */
export function Accounts() {
  const accounts = useQuery(accountQueries.list());
  const [adding, setAdding] = useState(false);
  return (
    <section aria-labelledby="accounts">
      <Group justify="space-between" mt="xl" mb="xs">
        <Title order={2} id="accounts">
          Owner and front desk accounts
        </Title>
        <Button variant="default" onClick={() => setAdding(true)}>
          Add front desk account
        </Button>
      </Group>
      <Asked query={accounts} waiting={<Lines count={3} />}>
        {(list) => (
          <ul className={classes.list}>
            {list
              .filter(({ clientId, instructorId }) => clientId === null && instructorId === null)
              .map(({ id, name, email, roles }) => (
                <li key={id} className={classes.rule}>
                  <strong>{name}</strong>
                  <Text>
                    {wordsFor(roles)}{' '}
                    <Text component="span" c="dimmed">
                      {email}
                    </Text>
                  </Text>
                </li>
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

const wordsFor = (roles: string) =>
  roles
    .split(',')
    .map((role) => roleWords[role.trim() as Role])
    .join(', ');
