import { Alert, Button, Group, Text } from '@mantine/core';
import type { ProposedPlan } from '@/api/types';
import { listed } from './who';
import classes from './plans.module.css';

interface Props {
  outcome: ProposedPlan;
  onUndo?: () => void;
  onClose: () => void;
}

/** What the proposal changed, who gains by it and who still does something else. */
export function SuitOutcome({ outcome, onUndo, onClose }: Props) {
  const { changes, remaining, notTakingPart } = outcome;
  return (
    <Alert
      color="leaf"
      variant="light"
      role="status"
      title={
        changes.length === 0
          ? 'Nothing to change'
          : changes.length === 1
            ? '1 movement gave way'
            : `${changes.length} movements gave way`
      }
    >
      {changes.length === 0 && (
        <Text size="sm">
          {remaining.length === 0
            ? 'Everybody who takes part does every movement, as taught or changed a little.'
            : 'No gentler movement suits more of them.'}
        </Text>
      )}
      <ul className={classes.changes}>
        {changes.map(({ position, from, to, gains, loses, why }) => (
          <li key={position}>
            <strong>
              {position}. {from} → {to}
            </strong>
            <Text size="sm">
              {listed(gains)} {gains.length === 1 ? 'takes' : 'take'} part now.{' '}
              {loses.length > 0 && `${listed(loses)} cannot. `}
              {why}
            </Text>
          </li>
        ))}
      </ul>
      {remaining.length > 0 && (
        <>
          <Text size="sm" fw={600}>
            Still something else:
          </Text>
          <ul className={classes.changes}>
            {remaining.map(({ position, name, who }) => (
              <li key={position}>
                <Text size="sm">
                  {position}. {name}: {listed(who)}
                </Text>
              </li>
            ))}
          </ul>
        </>
      )}
      {notTakingPart.length > 0 && (
        <Text size="sm" mt="xs">
          {listed(notTakingPart)} {notTakingPart.length === 1 ? 'does' : 'do'} not take part that
          day, whatever is planned.
        </Text>
      )}
      <Group gap="xs" mt="sm">
        {changes.length > 0 && onUndo !== undefined && (
          <Button size="xs" variant="default" onClick={onUndo}>
            Undo these changes
          </Button>
        )}
        <Button size="xs" variant="subtle" onClick={onClose}>
          Put this away
        </Button>
      </Group>
    </Alert>
  );
}
