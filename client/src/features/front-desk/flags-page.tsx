import { Button, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { flagQueries, useReadFlags } from '@/api/flags';
import type { Flag } from '@/api/types';
import { grouped, waits, type FlagGroup } from '@/components/flags/groups';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { tellRefused } from '@/components/states/told';
import { shortDay } from '@/components/time/days';
import { SeverityMark } from '@/components/verdict/mark';
import { RangHer } from '@/components/card/rang-her';
import classes from './desk.module.css';

const route = getRouteApi('/inside/desk/flags');

const kindWords: Record<Flag['kind'], string> = {
  onHold: 'On hold',
  letter: 'Letters',
  bookingNoLongerSuits: 'Bookings that no longer suit',
  ringHer: 'Please ring',
  pastDue: 'Due date passed, no word',
  screening: 'Health questions due',
  newFactor: 'Something new',
  noInstructor: 'No instructor',
  qualificationEnds: 'Qualification ends',
  qualification: 'Qualifications',
  stageChange: 'New stage',
};
/** Those nobody has read yet: the number beside the word Flags at the top of every page. */
const toRead = 'toRead';
const kinds = Object.keys(kindWords) as Flag['kind'][];

export function FlagsPage() {
  const flags = useQuery(flagQueries.list());
  const { kind } = route.useSearch();
  return (
    <>
      <Title>Flags</Title>
      <Text c="dimmed" mb="lg">
        What stands open today. A flag goes by itself once its cause is gone; reading it only says
        that somebody knows.
      </Text>
      <Asked query={flags} waiting={<Lines count={6} height={56} />}>
        {(list) => {
          const groups = grouped(list);
          const shown = groups.filter(
            (group) => kind === undefined || (kind === toRead ? waits(group) : group.kind === kind),
          );
          return (
            <div className={classes.flags}>
              <Kinds groups={groups} />
              {shown.length === 0 ? (
                <Empty
                  title={kind === toRead ? 'Everything has been read' : 'Nothing stands open'}
                />
              ) : (
                <ul className={classes.list}>
                  {shown.map((group) => (
                    <Standing key={group.key} group={group} />
                  ))}
                </ul>
              )}
            </div>
          );
        }}
      </Asked>
    </>
  );
}

function Kinds({ groups }: { groups: readonly FlagGroup[] }) {
  const count = (kind: Flag['kind']) => groups.filter((group) => group.kind === kind).length;
  return (
    <nav aria-label="Kinds of flag" className={classes.kinds}>
      <Go
        to="/desk/flags"
        search={{}}
        activeOptions={{ exact: true, includeSearch: true }}
        activeProps={{ 'aria-current': 'page' }}
        underline="never"
      >
        All <span>{groups.length}</span>
      </Go>
      <Go
        to="/desk/flags"
        search={{ kind: toRead }}
        activeOptions={{ exact: true, includeSearch: true }}
        activeProps={{ 'aria-current': 'page' }}
        underline="never"
      >
        To read <span>{groups.filter(waits).length}</span>
      </Go>
      {kinds
        .filter((kind) => count(kind) > 0)
        .map((kind) => (
          <Go
            key={kind}
            to="/desk/flags"
            search={{ kind }}
            activeOptions={{ exact: true, includeSearch: true }}
            activeProps={{ 'aria-current': 'page' }}
            underline="never"
          >
            {kindWords[kind]} <span>{count(kind)}</span>
          </Go>
        ))}
    </nav>
  );
}

function Standing({ group: { severity, kind, flags } }: { group: FlagGroup }) {
  const read = useReadFlags();
  const [first] = flags;
  const fresh = flags.filter(({ isNew }) => isNew).map(({ id }) => id);
  if (first === undefined) return null;
  const who = first.name ?? kindWords[kind];
  return (
    <li className={classes.flag}>
      <SeverityMark severity={severity} />
      <div>
        {first.clientId != null ? (
          <Go
            to="/desk/clients/$clientId"
            params={{ clientId: String(first.clientId) }}
            fw={600}
            c="inherit"
          >
            {who}
          </Go>
        ) : (
          first.sessionId != null && (
            <Go to="/desk" search={{ session: first.sessionId }} fw={600} c="inherit">
              Open the session
            </Go>
          )
        )}
        {flags.map(({ id, text }) => (
          <Text key={id}>{text}</Text>
        ))}
        <Text size="sm" c="dimmed">
          since {shortDay(first.since)}
        </Text>
      </div>
      {kind === 'ringHer' && first.clientId != null && (
        <RangHer clientId={first.clientId} called={who} />
      )}
      {kind !== 'ringHer' && fresh.length > 0 && (
        <Button
          size="xs"
          variant="default"
          loading={read.isPending}
          onClick={() => read.mutate(fresh, { onError: tellRefused })}
          aria-label={`Mark as read: ${who}, ${first.text}`}
        >
          Mark as read
        </Button>
      )}
    </li>
  );
}
