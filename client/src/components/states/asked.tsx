import { Alert, Button, Group, Skeleton, Stack, Text } from '@mantine/core';
import type { UseQueryResult } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Problem, wordsOf } from '@/api/problem';

interface AskedProps<T> {
  query: UseQueryResult<T>;
  children: (data: T) => ReactNode;
  /** Stands in while the first answer is on its way. */
  waiting?: ReactNode;
}

/** What was answered before stays while the connection is gone; not once it is refused: it may not be ours to see. */
const isTakenAway = ({ error }: { error: unknown }) =>
  error instanceof Problem && (error.status === 403 || error.status === 404);

/** One question to the server: waiting, refused or answered. */
export function Asked<T>({ query, children, waiting }: AskedProps<T>) {
  if (query.data !== undefined && !isTakenAway(query)) return children(query.data);
  if (query.isError)
    return (
      <Refused error={query.error}>
        <Button size="xs" variant="default" onClick={() => void query.refetch()}>
          Ask again
        </Button>
      </Refused>
    );
  return waiting ?? <Lines />;
}

export function Refused({ error, children }: { error: unknown; children?: ReactNode }) {
  if (error == null) return null;
  return (
    <Alert color="brick" variant="light" role="alert">
      <Text size="md">{wordsOf(error)}</Text>
      {children !== undefined && <Group mt="sm">{children}</Group>}
    </Alert>
  );
}

export function Lines({ count = 5, height = 44 }: { count?: number; height?: number }) {
  return (
    <Stack gap="sm" role="group" aria-busy="true" aria-label="Loading">
      {Array.from({ length: count }, (_, line) => (
        <Skeleton key={line} h={height} />
      ))}
    </Stack>
  );
}

/** Nothing to show, and what that means or what to do about it. */
export function Empty({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <Stack gap={4} py="xl" align="flex-start">
      <Text fw={600} size="lg">
        {title}
      </Text>
      {children !== undefined && (
        <Text component="div" c="dimmed" maw="34rem">
          {children}
        </Text>
      )}
    </Stack>
  );
}
