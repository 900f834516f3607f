import { Button, Group, Stack, Text } from '@mantine/core';
import { useReportLoss } from '@/api/clients';
import { Refused } from '@/components/states/asked';

interface Props {
  clientId: number;
  onDone: () => void;
  herself?: boolean;
}

/** Asked once, with no reason, no date and no follow-up. */
export function LossForm({ clientId, onDone, herself = false }: Props) {
  const report = useReportLoss(clientId);
  return (
    <Stack>
      <Refused error={report.error} />
      {herself ? (
        <Text>
          We are sorry. You need not explain anything. Your classes are released without charge, our
          messages stop, and nobody at the studio is told why. Nothing else is asked of you.
        </Text>
      ) : (
        <Text>
          Her classes are released without charge and every message to her stops. Nobody is shown a
          reason, and lists leave her out.
        </Text>
      )}
      <Group>
        <Button
          color="gray"
          loading={report.isPending}
          onClick={() => report.mutate({ on: null }, { onSuccess: onDone })}
        >
          {herself ? 'Yes, please do this' : 'Set it quietly'}
        </Button>
        <Button variant="default" onClick={onDone}>
          Not now
        </Button>
      </Group>
    </Stack>
  );
}
