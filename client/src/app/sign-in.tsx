import {
  Alert,
  Button,
  PasswordInput,
  Stack,
  Text,
  TextInput,
  Title,
  UnstyledButton,
} from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, useRouter } from '@tanstack/react-router';
import { useState } from 'react';
import { wordsOf } from '@/api/problem';
import { sessionQueries, useSignIn } from '@/api/session';
import type { Demo } from '@/api/types';
import { ColourScheme } from './colour-scheme';
import { landingOf } from './desks';
import classes from './sign-in.module.css';

const route = getRouteApi('/sign-in');

export function SignIn() {
  const { to } = route.useSearch();
  const router = useRouter();
  const signIn = useSignIn();
  const { data: demo } = useQuery(sessionQueries.demo());
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');

  const enter = (given: { email: string; password: string }) =>
    signIn.mutate(given, {
      onSuccess: (me) => router.history.push(to ?? landingOf(me)),
    });

  return (
    <main className={classes.page}>
      <div className={classes.tape} aria-hidden="true" />
      <div className={classes.sheet}>
        <Title>Sign in</Title>
        <Text c="dimmed" mt={4} mb="lg">
          Classes before and after birth, matched to the day they are held.
        </Text>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            enter({ email, password });
          }}
        >
          <Stack gap="sm">
            {signIn.error && (
              <Alert color="brick" role="alert">
                {wordsOf(signIn.error)}
              </Alert>
            )}
            <TextInput
              label="E-mail"
              type="email"
              autoComplete="username"
              required
              withAsterisk={false}
              value={email}
              onChange={(event) => setEmail(event.currentTarget.value)}
            />
            <PasswordInput
              label="Password"
              autoComplete="current-password"
              required
              withAsterisk={false}
              value={password}
              onChange={(event) => setPassword(event.currentTarget.value)}
            />
            <Button type="submit" size="md" mt="xs" loading={signIn.isPending}>
              Sign in
            </Button>
          </Stack>
        </form>
        <div className={classes.scheme}>
          <ColourScheme />
        </div>
      </div>
      {demo?.loaded === true && <DemoAccounts demo={demo} busy={signIn.isPending} onPick={enter} />}
    </main>
  );
}

interface DemoProps {
  demo: Demo;
  busy: boolean;
  onPick: (given: { email: string; password: string }) => void;
}

function DemoAccounts({ demo, busy, onPick }: DemoProps) {
  return (
    <section aria-labelledby="demo" className={classes.demo}>
      <Title order={2} id="demo">
        Or look round the demo studio
      </Title>
      <Text size="sm" c="dimmed" mb="xs">
        Everybody in it is invented. One press signs you in.
      </Text>
      <ul className={classes.accounts}>
        {demo.accounts.map((account) => (
          <li key={account.email}>
            <UnstyledButton
              className={classes.account}
              disabled={busy}
              onClick={() => onPick({ email: account.email, password: account.password })}
            >
              <span className={classes.role}>{roleName(account.role)}</span>
              <span className={classes.does}>{account.does}</span>
              <span className={classes.email}>{account.email}</span>
            </UnstyledButton>
          </li>
        ))}
      </ul>
    </section>
  );
}

const roleNames: Record<string, string> = {
  owner: 'Owner',
  frontDesk: 'Front desk',
  instructor: 'Instructor',
  client: 'Client',
};
const roleName = (role: string) => roleNames[role] ?? role;
