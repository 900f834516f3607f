import { Text } from '@mantine/core';
import { Needs } from '@/components/verdict/mark';

interface Props {
  source: { cite: string; fromMemory: boolean };
}

/** Where something comes from; what nobody has read in a text says so plainly. */
export const SourceLine = ({ source: { cite, fromMemory } }: Props) => (
  <Text component="div" size="sm" c="dimmed">
    {cite.replace('; from memory', '')}
    {fromMemory && (
      <div>
        <Needs tone="mind">From memory: please verify</Needs>
      </div>
    )}
  </Text>
);
