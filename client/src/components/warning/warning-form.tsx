import {
  Anchor,
  Button,
  Checkbox,
  Group,
  Paper,
  Stack,
  Text,
  Textarea,
  Title,
} from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { useHold } from '@/api/clients';
import type { StopAndRefer } from '@/api/types';
import { Refused } from '@/components/states/asked';

interface Props {
  clientId: number;
  called: string;
  sessionId?: number;
  onDone: () => void;
}

/**
 * Something is not well: one press holds everything of hers at once. What it was may be said before, and never has to be.
 */
export function WarningForm({ clientId, called, sessionId, onDone }: Props) {
  const { data: known = [] } = useQuery(catalogueQueries.warningSigns());
  const hold = useHold(clientId);
  const [signs, setSigns] = useState<string[]>([]);
  const [happened, setHappened] = useState('');
  const [done, setDone] = useState('');
  const raised = hold.data;
  if (raised) return <StopCard card={raised} called={called} onDone={onDone} />;
  return (
    <Stack gap="md">
      <Refused error={hold.error} />
      <Text>
        Her bookings are held at once, at no charge, until a new letter has been read. Nothing below
        has to be filled in first.
      </Text>
      <Button
        color="brick"
        size="lg"
        loading={hold.isPending}
        onClick={() =>
          hold.mutate({
            sessionId: sessionId ?? null,
            signs,
            happened: happened.trim(),
            done: done.trim(),
          })
        }
      >
        Stop, and hold everything
      </Button>
      <Checkbox.Group label="What she has, if she said" value={signs} onChange={setSigns}>
        <Stack gap={6} mt={6}>
          {known.map((sign) => (
            <Checkbox key={sign.code} value={sign.code} label={sign.name} />
          ))}
        </Stack>
      </Checkbox.Group>
      <Textarea
        label="What happened"
        autosize
        minRows={2}
        maxLength={2000}
        value={happened}
        onChange={(event) => setHappened(event.currentTarget.value)}
      />
      <Textarea
        label="What was done"
        autosize
        minRows={2}
        maxLength={2000}
        value={done}
        onChange={(event) => setDone(event.currentTarget.value)}
      />
      <Group>
        <Button variant="default" onClick={onDone}>
          Leave it: all is well
        </Button>
      </Group>
    </Stack>
  );
}

function StopCard({
  card,
  called,
  onDone,
}: {
  card: StopAndRefer;
  called: string;
  onDone: () => void;
}) {
  return (
    <Paper withBorder p="lg" role="alert">
      <Title order={3}>{called} is on hold</Title>
      <Text size="lg" mt="sm">
        {card.says}
      </Text>
      <Text size="xl" fw={700} mt="md">
        Emergency number:{' '}
        <Anchor inherit href={`tel:${card.emergencyNumber.replace(/[^\d+]/g, '')}`}>
          {card.emergencyNumber}
        </Anchor>
      </Text>
      <Text c="dimmed" mt="sm">
        This supports judgement; it does not diagnose.
      </Text>
      <Button mt="lg" onClick={onDone}>
        Done
      </Button>
    </Paper>
  );
}
