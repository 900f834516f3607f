import { Alert, Button, Group, Text, Title } from '@mantine/core';
import { useInfiniteQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { messageQueries, useRetryAll, useTestMessage } from '@/api/messages';
import type { MessageCounts, Sending } from '@/api/types';
import { Empty, Lines, Refused } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { tell } from '@/components/states/told';
import { Filters } from './filters';
import { MessageModal } from './message-modal';
import { MessageTable } from './message-table';

const route = getRouteApi('/inside/studio/messages');

/** What was told to whom, and how far it has come; the newest first. */
export function MessagesPage() {
  const { message, ...filter } = route.useSearch();
  const navigate = route.useNavigate();
  const log = useInfiniteQuery(messageQueries.log(filter));
  const messages = log.data?.pages.flatMap((page) => page.messages);
  const first = log.data?.pages[0];
  const { status, kind, find } = filter;
  const filtered = [status, kind, find].some((value) => value !== undefined);
  return (
    <>
      <Title>Messages</Title>
      <Text c="dimmed" mb="md" maw="46rem">
        What the studio writes to clients and instructors by e-mail. Nothing of anybody’s health
        ever stands in one. <Go to="/studio/messages/kinds">See every kind</Go>
      </Text>
      {first && <How sending={first.sending} counts={first.counts} />}
      <Filters filter={filter} onChange={(search) => void navigate({ search, replace: true })} />
      {log.isError && messages === undefined ? (
        <Refused error={log.error}>
          <Button size="xs" variant="default" onClick={() => void log.refetch()}>
            Ask again
          </Button>
        </Refused>
      ) : messages === undefined ? (
        <Lines count={8} />
      ) : messages.length === 0 ? (
        filtered ? (
          <Empty title="No message like that">Take something out of the search.</Empty>
        ) : (
          <Empty title="Nothing has been written yet">
            Bookings, changes of the timetable and what a client’s page asks of her are told here as
            they happen.
          </Empty>
        )
      ) : (
        <>
          <MessageTable
            messages={messages}
            onOpen={(id) => void navigate({ search: { ...filter, message: id } })}
          />
          {log.isError && <Refused error={log.error} />}
          <Group mt="md">
            {log.hasNextPage ? (
              <Button
                variant="default"
                loading={log.isFetchingNextPage}
                onClick={() => void log.fetchNextPage()}
              >
                Show earlier ones
              </Button>
            ) : (
              <Text c="dimmed">These are all.</Text>
            )}
          </Group>
        </>
      )}
      <MessageModal
        messageId={message}
        onClose={() => void navigate({ search: filter, replace: true })}
      />
    </>
  );
}

function How({ sending, counts }: { sending: Sending; counts: MessageCounts }) {
  const test = useTestMessage();
  const again = useRetryAll();
  const { waiting, stuck, failed } = counts;
  return (
    <>
      {sending.server == null ? (
        <Alert color="amber" variant="light" mb="md" title="Nothing leaves the house yet">
          No mail server is set, so messages are written to files in the folder “mail” of the
          studio’s data and can be read here. The settings begin with Studio__Mail__.
        </Alert>
      ) : (
        <Text mb="xs">
          Sent over {sending.server} from {sending.from}; links in them lead to {sending.publicUrl}.
        </Text>
      )}
      <Group mb="lg">
        <Text fw={600} role="status">
          {waiting === 0 ? 'Nothing waits' : `${waiting} to be sent`}
          {stuck > 0 && `, ${stuck} of them tried in vain`}
          {failed > 0 && ` · ${failed} could not be delivered`}
        </Text>
        <Button
          variant="default"
          loading={test.isPending}
          onClick={() =>
            test.mutate(undefined, { onSuccess: () => tell('A test message to you is under way.') })
          }
        >
          Send me a test message
        </Button>
        {stuck > 0 && (
          <Button variant="default" loading={again.isPending} onClick={() => again.mutate()}>
            Try them again now
          </Button>
        )}
      </Group>
      <Refused error={test.error ?? again.error} />
    </>
  );
}
