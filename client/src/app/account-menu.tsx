import { Button, Menu, Switch } from '@mantine/core';
import { IconChevronDown, IconLock, IconLogout } from '@tabler/icons-react';
import { useNavigate } from '@tanstack/react-router';
import { lazy, Suspense, useState } from 'react';
import { useSignOut } from '@/api/session';
import type { Me } from '@/api/types';
import { useShortcutsOn } from '@/components/keyboard/shortcut';
import { ColourScheme } from './colour-scheme';
import classes from './shell.module.css';

const PasswordModal = lazy(() =>
  import('./password-modal').then((modal) => ({ default: modal.PasswordModal })),
);

export function AccountMenu({ me }: { me: Me }) {
  const signOut = useSignOut();
  const navigate = useNavigate();
  const [changing, setChanging] = useState(false);
  const [shortcuts, setShortcuts] = useShortcutsOn();
  return (
    <div className={classes.account}>
      <Menu position="bottom-end" width={272} shadow="md" withinPortal={false}>
        <Menu.Target>
          <Button
            variant="subtle"
            color="gray"
            px="xs"
            rightSection={<IconChevronDown size={16} aria-hidden />}
            className={classes.who}
          >
            <span className={classes.whoName}>{me.name}</span>
          </Button>
        </Menu.Target>
        <Menu.Dropdown>
          <Menu.Label>{me.email}</Menu.Label>
          <div className={classes.menuBlock}>
            <ColourScheme />
            <Switch
              mt="sm"
              label="Single-key shortcuts"
              description="“/” finds, “b” goes to the first booking"
              checked={shortcuts}
              onChange={(event) => setShortcuts(event.currentTarget.checked)}
            />
          </div>
          <Menu.Divider />
          <Menu.Item
            leftSection={<IconLock size={18} aria-hidden />}
            onClick={() => setChanging(true)}
          >
            Change password
          </Menu.Item>
          <Menu.Item
            leftSection={<IconLogout size={18} aria-hidden />}
            onClick={() =>
              signOut.mutate(undefined, { onSuccess: () => void navigate({ to: '/sign-in' }) })
            }
          >
            Sign out
          </Menu.Item>
        </Menu.Dropdown>
      </Menu>
      {changing && (
        <Suspense>
          <PasswordModal onClose={() => setChanging(false)} />
        </Suspense>
      )}
    </div>
  );
}
