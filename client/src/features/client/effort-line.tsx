import { Button, Collapse, Stack, Text, Title } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import type { ClientCard } from '@/api/types';
import { SourceLine } from '@/components/rules/source-line';
import { Go } from '@/components/states/go';

/** How hard a class may feel: what she can still say, and her heart rate where we know her age. */
export function EffortLine({ her: { intensity, bornOn } }: { her: ClientCard }) {
  const [shown, { toggle }] = useDisclosure(false);
  if (intensity == null) return null;
  const { heartRate, talkTest, talkSource } = intensity;
  return (
    <section aria-labelledby="effort">
      <Title order={2} id="effort" mb={4}>
        How hard it may feel
      </Title>
      <Text>{talkTest}</Text>
      {heartRate != null ? (
        <Text>
          Your heart rate: <strong>{heartRate.says}</strong> beats a minute
          {heartRate.byLetter && ', as far as your letter goes'}. What you feel counts more than the
          figure.
        </Text>
      ) : (
        bornOn == null && (
          <Text size="sm" c="dimmed">
            With your date of birth we can tell you a heart rate too: it is under{' '}
            <Go to="/my/details">About me</Go>, if you like.
          </Text>
        )
      )}
      <Button
        variant="transparent"
        size="compact-sm"
        px={0}
        aria-expanded={shown}
        aria-controls="effort-sources"
        onClick={toggle}
      >
        Where this stands
      </Button>
      <Collapse expanded={shown} id="effort-sources">
        <Stack gap={4}>
          <SourceLine source={talkSource} />
          {heartRate?.sources.map((source) => (
            <SourceLine key={source.cite} source={source} />
          ))}
        </Stack>
      </Collapse>
    </section>
  );
}
