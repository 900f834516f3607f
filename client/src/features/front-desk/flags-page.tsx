import { Button, SegmentedControl, Text, Title } from '@mantine/core';
import { Go } from '@/components/states/go';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { flagQueries, useReadFlag } from '@/api/flags';
import type { Flag, Severity } from '@/api/types';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { tellRefused } from '@/components/states/told';
import { shortDay } from '@/components/time/days';
import { SeverityMark } from '@/components/verdict/mark';
import classes from './desk.module.css';

const order: Severity[] = ['urgent', 'attention', 'info'];

export function FlagsPage() {
  const flags = useQuery(flagQueries.list());
  const [show, setShow] = useState<'new' | 'all'>('all');
  return (
    <div className={classes.narrow}>
      <Title>Flags</Title>
      <Text c="dimmed" mb="md">
        What stands open today. A flag goes by itself once its cause is gone.
      </Text>
      <Asked query={flags} waiting={<Lines count={6} height={56} />}>
        {(list) => {
          const unread = list.filter(({ isNew }) => isNew);
          const shown = show === 'new' ? unread : list;
          return (
            <>
              <SegmentedControl
                aria-label="Which flags"
                value={show}
                onChange={setShow}
                data={[
                  { value: 'all', label: `All ${list.length}` },
                  { value: 'new', label: `Not read ${unread.length}` },
                ]}
              />
              {shown.length === 0 ? (
                <Empty
                  title={show === 'new' ? 'Everything has been read' : 'Nothing stands open'}
                />
              ) : (
                <ul className={classes.list} style={{ marginTop: '1rem' }}>
                  {order.flatMap((severity) =>
                    shown
                      .filter((flag) => flag.severity === severity)
                      .map((flag) => <Standing key={flag.id} flag={flag} />),
                  )}
                </ul>
              )}
            </>
          );
        }}
      </Asked>
    </div>
  );
}

function Standing({ flag }: { flag: Flag }) {
  const read = useReadFlag();
  return (
    <li className={classes.flag}>
      <SeverityMark severity={flag.severity} />
      <div>
        {flag.clientId != null && (
          <Go
            to="/desk/clients/$clientId"
            params={{ clientId: String(flag.clientId) }}
            fw={600}
            c="inherit"
          >
            {flag.name ?? flag.called}
          </Go>
        )}
        {flag.clientId == null && flag.sessionId != null && (
          <Go to="/desk" search={{ session: flag.sessionId }} fw={600} c="inherit">
            Open the session
          </Go>
        )}
        <Text>{flag.text}</Text>
        <Text size="sm" c="dimmed">
          since {shortDay(flag.since.slice(0, 10))}
        </Text>
      </div>
      {flag.isNew && (
        <Button
          size="xs"
          variant="default"
          loading={read.isPending}
          onClick={() => read.mutate(flag.id, { onError: tellRefused })}
          aria-label={`Read: ${flag.name ?? ''} ${flag.text}`}
        >
          Read
        </Button>
      )}
    </li>
  );
}
