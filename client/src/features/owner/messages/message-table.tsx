import { Button, Table, Text, UnstyledButton } from '@mantine/core';
import {
  IconAlertTriangle,
  IconCircleCheck,
  IconCircleMinus,
  IconClock,
} from '@tabler/icons-react';
import { useRetry } from '@/api/messages';
import type { LoggedMessage, MessageStatus } from '@/api/types';
import { tellRefused } from '@/components/states/told';
import { momentWords } from '@/components/time/zone';
import classes from './messages.module.css';

interface Props {
  messages: readonly LoggedMessage[];
  onOpen: (messageId: number) => void;
}

export const MessageTable = ({ messages, onOpen }: Props) => (
  <Table.ScrollContainer
    minWidth="56rem"
    type="native"
    role="region"
    tabIndex={0}
    aria-label="Messages, the newest first"
  >
    <Table verticalSpacing="xs">
      <Table.Thead>
        <Table.Tr>
          <Table.Th>About</Table.Th>
          <Table.Th>To</Table.Th>
          <Table.Th>Written</Table.Th>
          <Table.Th>State</Table.Th>
          <Table.Th>Last answer</Table.Th>
          <Table.Th>
            <span className={classes.unseen}>What can be done</span>
          </Table.Th>
        </Table.Tr>
      </Table.Thead>
      <Table.Tbody>
        {messages.map((message) => (
          <Row key={message.id} message={message} onOpen={onOpen} />
        ))}
      </Table.Tbody>
    </Table>
  </Table.ScrollContainer>
);

function Row({ message, onOpen }: { message: LoggedMessage; onOpen: (messageId: number) => void }) {
  const retry = useRetry();
  const { id, title, to, address, madeAt, says, nextAt, endedAt, lastAnswer, mayRetry } = message;
  return (
    <Table.Tr>
      <Table.Td>
        <UnstyledButton
          className={classes.open}
          aria-label={`Read: ${title}, to ${to}`}
          onClick={() => onOpen(id)}
        >
          {title}
        </UnstyledButton>
      </Table.Td>
      <Table.Td>
        {to}
        <Text size="sm" c="dimmed" className={classes.long}>
          {address === '' ? 'no e-mail address' : address}
        </Text>
      </Table.Td>
      <Table.Td>{momentWords(madeAt)}</Table.Td>
      <Table.Td>
        <span className={classes.state}>
          <StateMark status={message.status} /> {says}
        </span>
        <Text size="sm" c="dimmed">
          {nextAt != null ? `next ${momentWords(nextAt)}` : endedAt != null && momentWords(endedAt)}
        </Text>
      </Table.Td>
      <Table.Td className={classes.answer}>{lastAnswer}</Table.Td>
      <Table.Td>
        {mayRetry && (
          <Button
            size="xs"
            variant="default"
            loading={retry.isPending}
            aria-label={`Try again now: ${title}, to ${to}`}
            onClick={() => retry.mutate(id, { onError: tellRefused })}
          >
            Try again now
          </Button>
        )}
      </Table.Td>
    </Table.Tr>
  );
}

/** A shape of its own for each state; the word beside it says the same. */
function StateMark({ status }: { status: MessageStatus }) {
  const given = { size: 18, 'aria-hidden': true } as const;
  switch (status) {
    case 'waiting':
      return <IconClock {...given} />;
    case 'sent':
      return <IconCircleCheck {...given} />;
    case 'refused':
      return <IconAlertTriangle {...given} className={classes.refused} />;
    case 'dropped':
      return <IconCircleMinus {...given} />;
  }
}
