import { Anchor, Button, Paper, Text, Title } from '@mantine/core';
import { useEffect, useRef } from 'react';
import type { StopAndRefer } from '@/api/types';
import { CautionWords } from '@/components/states/safety-note';
import { telephone } from '@/components/states/telephone';

interface Props {
  card: StopAndRefer;
  title: string;
  onDone: () => void;
}

/** It is held: what to do now, and the number to call. */
export function StopCard({ card, title, onDone }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <Paper withBorder p="lg" role="alert">
      <Title order={2} size="h3" ref={heading} tabIndex={-1}>
        {title}
      </Title>
      <Text size="lg" mt="sm">
        {card.says}
      </Text>
      <Text size="xl" fw={700} mt="md">
        Emergency number:{' '}
        <Anchor inherit href={telephone(card.emergencyNumber)}>
          {card.emergencyNumber}
        </Anchor>
      </Text>
      <CautionWords number={card.emergencyNumber} />
      <Button mt="lg" onClick={onDone}>
        Done
      </Button>
    </Paper>
  );
}
