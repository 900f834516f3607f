import { Button, Group, Title } from '@mantine/core';
import { useReadFlag, useReadRoster } from '@/api/flags';
import type { Person } from '@/api/types';
import { tellRefused } from '@/components/states/told';
import { SeverityMark } from '@/components/verdict/mark';
import classes from './teach.module.css';

interface Props {
  sessionId: number;
  people: readonly Person[];
}

/** What is new since she last looked, to be ticked as read before the session. */
export function NewFlags({ sessionId, people }: Props) {
  const one = useReadFlag();
  const all = useReadRoster();
  const fresh = people.flatMap((person) =>
    person.flags.filter(({ isNew }) => isNew).map((flag) => ({ person, flag })),
  );
  fresh.sort((a, b) => weight[a.flag.severity] - weight[b.flag.severity]);
  if (fresh.length === 0) return null;
  return (
    <section className={classes.fresh} aria-labelledby="fresh">
      <Group justify="space-between" mb={4}>
        <Title order={2} id="fresh">
          New since you last looked
        </Title>
        <Button
          size="sm"
          loading={all.isPending}
          onClick={() => all.mutate(sessionId, { onError: tellRefused })}
        >
          {fresh.length === 1 ? 'Mark as read' : `Mark all ${fresh.length} as read`}
        </Button>
      </Group>
      <ul className={classes.freshList}>
        {fresh.map(({ person, flag }) => (
          <li key={flag.id} className={classes.freshFlag}>
            <SeverityMark severity={flag.severity} />
            <span>
              <strong>{person.called}</strong> {flag.text}
            </span>
            {fresh.length > 1 && (
              <Button
                size="xs"
                variant="default"
                loading={one.isPending && one.variables === flag.id}
                onClick={() => one.mutate(flag.id, { onError: tellRefused })}
                aria-label={`Mark as read: ${person.called}, ${flag.text}`}
              >
                Mark as read
              </Button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

const weight = { urgent: 0, attention: 1, info: 2 };
