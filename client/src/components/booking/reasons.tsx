import { List, Text } from '@mantine/core';
import type { Reason } from '@/api/types';

/** Every reason, what would lift it, and the source where the reader is given one. */
export function Reasons({ reasons }: { reasons: readonly Reason[] }) {
  return (
    <List spacing={4} size="sm" listStyleType="none" withPadding={false} center={false}>
      {reasons.map((reason) => (
        <List.Item key={`${reason.code}${reason.text}`}>
          {reason.text}
          {reason.lift != null && (
            <Text size="sm" c="dimmed">
              {reason.lift.text}
            </Text>
          )}
          {reason.source != null && (
            <Text size="xs" c="dimmed">
              Source: {reason.source.cite}
            </Text>
          )}
        </List.Item>
      ))}
    </List>
  );
}
