import { Alert, Button, Modal, PasswordInput, Stack } from '@mantine/core';
import { useState } from 'react';
import { Problem, wordsOf } from '@/api/problem';
import { useChangePassword } from '@/api/session';

export function PasswordModal({ onClose }: { onClose: () => void }) {
  return (
    <Modal opened onClose={onClose} title="Change password" size="sm">
      <PasswordForm onDone={onClose} />
    </Modal>
  );
}

function PasswordForm({ onDone }: { onDone: () => void }) {
  const [current, setCurrent] = useState('');
  const [next, setNext] = useState('');
  const change = useChangePassword();
  const fields = change.error instanceof Problem ? change.error.fields : {};
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        change.mutate({ current, next }, { onSuccess: onDone });
      }}
    >
      <Stack>
        {change.error && (
          <Alert color="brick" role="alert">
            {wordsOf(change.error)}
          </Alert>
        )}
        <PasswordInput
          label="Password now"
          autoComplete="current-password"
          required
          value={current}
          error={fields.current}
          onChange={(event) => setCurrent(event.currentTarget.value)}
        />
        <PasswordInput
          label="New password"
          autoComplete="new-password"
          required
          value={next}
          error={fields.next}
          onChange={(event) => setNext(event.currentTarget.value)}
        />
        <Button type="submit" loading={change.isPending}>
          Change it
        </Button>
      </Stack>
    </form>
  );
}
