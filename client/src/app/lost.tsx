import { Button, Stack, Text, Title } from '@mantine/core';
import { Go } from '@/components/states/go';
import { type ErrorComponentProps } from '@tanstack/react-router';
import { Problem, wordsOf } from '@/api/problem';

export function Lost() {
  return (
    <Stack align="flex-start" py="xl" px="md">
      <Title>There is no such page</Title>
      <Text>The address may be old, or mistyped.</Text>
      <Go to="/">Go to your own first page</Go>
    </Stack>
  );
}

export function Trouble({ error, reset }: ErrorComponentProps) {
  // Anything but an answer of the server: often a part of the program that could not be fetched,
  // and a browser does not ask for the same part twice.
  const again = () => (error instanceof Problem ? reset() : window.location.reload());
  return (
    <Stack align="flex-start" py="xl" px="md" role="alert">
      <Title>This page could not be shown</Title>
      <Text>{wordsOf(error)}</Text>
      <Button onClick={again}>Try again</Button>
    </Stack>
  );
}
