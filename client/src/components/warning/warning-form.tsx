import { Button, Group, Stack, Text, Textarea } from '@mantine/core';
import { Refused } from '@/components/states/asked';
import { SignChoice } from './sign-choice';
import { StopCard } from './stop-card';
import { useRaise } from './use-raise';

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
  const { hold, raise, ...said } = useRaise(clientId, sessionId);
  if (hold.data)
    return <StopCard card={hold.data} title={`${called} is on hold`} onDone={onDone} />;
  return (
    <Stack gap="md">
      <Refused error={hold.error} />
      <Text>
        Her bookings are held at once, at no charge, until a new letter has been read. Nothing below
        has to be filled in first.
      </Text>
      <Button color="brick" size="lg" loading={hold.isPending} onClick={raise}>
        Stop, and hold everything
      </Button>
      <SignChoice label="What she has, if she said" value={said.signs} onChange={said.setSigns} />
      <Textarea
        label="What happened"
        autosize
        minRows={2}
        maxLength={2000}
        value={said.happened}
        onChange={(event) => said.setHappened(event.currentTarget.value)}
      />
      <Textarea
        label="What was done"
        autosize
        minRows={2}
        maxLength={2000}
        value={said.done}
        onChange={(event) => said.setDone(event.currentTarget.value)}
      />
      <Group>
        <Button variant="default" onClick={onDone} disabled={hold.isPending}>
          Leave it: all is well
        </Button>
      </Group>
    </Stack>
  );
}
