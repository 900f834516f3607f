import { Collapse, Text, UnstyledButton } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { IconChevronDown } from '@tabler/icons-react';
import { useQuery } from '@tanstack/react-query';
import { clientQueries } from '@/api/clients';
import type { Change, PlanShare } from '@/api/types';
import { Reasons } from '@/components/booking/reasons';
import { Asked, Lines } from '@/components/states/asked';
import { MovementMark } from '@/components/verdict/mark';
import { besides, changeWords, reasonWords, shareWords } from './changes';
import classes from './my.module.css';

interface Props {
  clientId: number;
  sessionId: number;
  plan?: PlanShare | null;
  /** Which class, for those who hear the button and not what is around it. */
  of: string;
}

/** How much of a class is as taught; pressed, what changes and why. Nothing where all of it is as taught. */
export function WhatChanges({ clientId, sessionId, plan, of }: Props) {
  const [opened, { toggle }] = useDisclosure(false);
  if (plan == null || plan.changed === 0) return null;
  const id = `changes-${sessionId}`;
  return (
    <div>
      <UnstyledButton
        className={classes.changesButton}
        aria-expanded={opened}
        aria-controls={id}
        aria-label={`${shareWords(plan)}: ${of}`}
        onClick={toggle}
      >
        <span>{shareWords(plan)}</span>
        <IconChevronDown size={18} aria-hidden data-open={opened || undefined} />
      </UnstyledButton>
      <Collapse expanded={opened} id={id}>
        {opened && <Changes clientId={clientId} sessionId={sessionId} />}
      </Collapse>
    </div>
  );
}

function Changes({ clientId, sessionId }: { clientId: number; sessionId: number }) {
  const session = useQuery(clientQueries.session(clientId, sessionId));
  return (
    <Asked query={session} waiting={<Lines count={3} height={40} />}>
      {({ choice, changes }) => {
        const rest = besides(choice, changes);
        return (
          <div className={classes.changes}>
            {changes.map((change) => (
              <OneChange key={change.movements[0]?.position} change={change} />
            ))}
            {rest.length > 0 && (
              <section>
                <Text fw={600}>In the class as a whole</Text>
                <Reasons reasons={rest} />
              </section>
            )}
            <Text size="sm" c="dimmed">
              Your instructor knows what you do instead; there is nothing to prepare. If anything
              feels wrong, stop and say so. Your own midwife or doctor comes first.
            </Text>
          </div>
        );
      }}
    </Asked>
  );
}

const OneChange = ({ change }: { change: Change }) => (
  <section className={classes.change}>
    <ul className={classes.list}>
      {change.movements.map((movement) => (
        <li key={movement.position}>
          <MovementMark verdict={movement.verdict} /> {changeWords(movement)}
        </li>
      ))}
    </ul>
    <Text size="sm" mt={4} fw={600}>
      {reasonWords(change)}
    </Text>
    {change.reasons.map(({ text, source, lift }) => (
      <div key={text}>
        <Text size="sm">{text}</Text>
        {lift != null && (
          <Text size="sm" c="dimmed">
            {lift.text}
          </Text>
        )}
        {source != null && (
          <Text size="xs" c="dimmed">
            Source: {source.cite}
          </Text>
        )}
      </div>
    ))}
  </section>
);
