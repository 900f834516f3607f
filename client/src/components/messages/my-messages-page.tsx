import { Stack, Switch, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { messageQueries, useChooseMessages } from '@/api/messages';
import type { MessageChoice, MyMessage } from '@/api/types';
import { Asked, Empty, Lines, Refused } from '@/components/states/asked';
import { momentWords } from '@/components/time/zone';
import classes from './messages.module.css';

/** What the studio wrote to the reader, and what she wants to receive. */
export function MyMessagesPage() {
  const mine = useQuery(messageQueries.mine());
  const choices = useQuery(messageQueries.choices());
  return (
    <div className={classes.page}>
      <Title mb="md">Messages</Title>
      <Asked query={choices} waiting={<Lines count={2} />}>
        {(kinds) => (kinds.length === 0 ? null : <Choices kinds={kinds} />)}
      </Asked>
      <section className={classes.section} aria-labelledby="sent">
        <Title order={2} id="sent" mb="sm">
          What we wrote to you
        </Title>
        <Asked query={mine} waiting={<Lines count={4} height={72} />}>
          {(messages) =>
            messages.length === 0 ? (
              <Empty title="Nothing yet">
                What the studio writes to you by e-mail can be read here as well.
              </Empty>
            ) : (
              <ol className={classes.list}>
                {messages.map((message) => (
                  <One key={message.id} message={message} />
                ))}
              </ol>
            )
          }
        </Asked>
      </section>
    </div>
  );
}

function Choices({ kinds }: { kinds: readonly MessageChoice[] }) {
  const choose = useChooseMessages();
  return (
    <section aria-labelledby="wanted">
      <Title order={2} id="wanted">
        What you want to receive
      </Title>
      <Text c="dimmed" mb="md">
        News of what is booked for you, or of what you teach, always comes.
      </Text>
      <Stack gap="sm">
        {kinds.map(({ kind, title, wanted }) => (
          <Switch
            key={kind}
            label={title}
            checked={choose.variables?.kind === kind ? choose.variables.wanted : wanted}
            disabled={choose.isPending}
            onChange={(event) => choose.mutate({ kind, wanted: event.currentTarget.checked })}
          />
        ))}
        <Refused error={choose.error} />
      </Stack>
    </section>
  );
}

const One = ({ message: { subject, text, at, says } }: { message: MyMessage }) => (
  <li className={classes.message}>
    <Title order={3}>{subject}</Title>
    <Text size="sm" c="dimmed">
      {says}, {momentWords(at)}
    </Text>
    <Text className={classes.said}>{text}</Text>
  </li>
);
