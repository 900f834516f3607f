import { Button, Text, Title } from '@mantine/core';
import { useState } from 'react';
import type { Incident } from '@/api/types';
import { Go } from '@/components/states/go';
import { fullDate } from '@/components/time/days';
import { momentAt, zoneName } from '@/components/time/zone';
import { Needs } from '@/components/verdict/mark';
import { AddMore } from './add-more';
import classes from './incidents.module.css';

/** One entry, with what was added to it later. */
export function IncidentEntry({ entry }: { entry: Incident }) {
  const [adding, setAdding] = useState(false);
  return (
    <li className={classes.entry}>
      <Title order={2} size="h3">
        <Go
          to="/studio/people/$clientId"
          params={{ clientId: String(entry.clientId) }}
          inherit
          c="inherit"
        >
          {entry.name}
        </Go>
      </Title>
      <Text c="dimmed">
        {momentAt(entry.raisedAt, entry.zone)}, {zoneName(entry.zone)} · raised by{' '}
        {entry.raisedBy ?? 'an account that is gone'}
      </Text>
      {entry.sessionId != null && entry.sessionOn != null && (
        <Text>
          In{' '}
          <Go to="/studio/incidents" search={{ session: entry.sessionId }} c="inherit">
            {entry.className}, {fullDate(entry.sessionOn)}, {entry.startsLocal}
          </Go>
          , {entry.place}
        </Text>
      )}
      <dl className={classes.facts}>
        <dt>Signs</dt>
        <dd>{entry.signs.length === 0 ? 'None was named.' : entry.signs.join(', ')}</dd>
        <dt>What happened</dt>
        <dd className={classes.said}>{entry.happened}</dd>
        <dt>What was done</dt>
        <dd className={classes.said}>{entry.done}</dd>
        <dt>Hold</dt>
        <dd>{entry.holdStands ? <Needs tone="stop">{entry.hold}</Needs> : entry.hold}</dd>
      </dl>
      {entry.more.length > 0 && (
        <>
          <Title order={3} size="h4" mt="sm">
            Added later
          </Title>
          <ul className={classes.more}>
            {entry.more.map(({ id, at, by, happened, done }) => (
              <li key={id}>
                <Text size="sm" c="dimmed">
                  {momentAt(at, entry.zone)} · {by ?? 'an account that is gone'}
                </Text>
                <Text className={classes.said}>{happened}</Text>
                {done !== '' && <Text className={classes.said}>Done: {done}</Text>}
              </li>
            ))}
          </ul>
        </>
      )}
      <div className={classes.screen}>
        {adding ? (
          <AddMore entry={entry} onDone={() => setAdding(false)} />
        ) : (
          <Button
            mt="sm"
            size="xs"
            variant="default"
            aria-label={`Add to the entry about ${entry.name}, ${momentAt(entry.raisedAt, entry.zone)}`}
            onClick={() => setAdding(true)}
          >
            Add to this
          </Button>
        )}
      </div>
    </li>
  );
}
