import { Button, Group, Text } from '@mantine/core';
import { useCheckTrail } from '@/api/audit';
import { Refused } from '@/components/states/asked';
import { Needs } from '@/components/verdict/mark';
import { checkWords } from './words';

/** Asks the server to go through the whole trail, and says what came of it. */
export function TrailCheck() {
  const check = useCheckTrail();
  return (
    <>
      <Group mb="md">
        <Button variant="default" loading={check.isPending} onClick={() => check.mutate()}>
          Check the trail
        </Button>
        <div role="status">
          {check.data !== undefined &&
            (check.data.whole ? (
              <Text>{checkWords(check.data)}</Text>
            ) : (
              <Needs tone="stop">{checkWords(check.data)}</Needs>
            ))}
        </div>
      </Group>
      <Refused error={check.error} />
    </>
  );
}
