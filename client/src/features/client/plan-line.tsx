import { Text } from '@mantine/core';
import type { PlanShare } from '@/api/types';

/** How much of a class she does as taught; nothing where that is all of it. */
export const PlanLine = ({ plan }: { plan?: PlanShare | null }) =>
  plan == null || plan.asTaught === plan.minutes ? null : (
    <Text size="sm" c="dimmed">
      {plan.asTaught} of {plan.minutes} minutes as taught
    </Text>
  );
