import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { flagQueries } from '@/api/flags';
import { letterQueries } from '@/api/letters';
import { messageQueries } from '@/api/messages';
import { moveQueries } from '@/api/moves';
import { waitingFor } from '@/components/flags/groups';
import type { Desk } from './desks';
import classes from './shell.module.css';

export function DeskLinks({ desk }: { desk: Desk }) {
  return (
    <nav aria-label={desk.name} className={classes.links}>
      {desk.links.map(({ to, label, counts, holds = false }) => (
        <Link
          key={to}
          to={to}
          activeOptions={{ exact: !holds, includeSearch: false }}
          activeProps={{ 'aria-current': 'page' }}
          className={classes.link}
        >
          {label}
          {counts === 'moves' && <MoveCount />}
          {counts === 'flags' && <FlagCount />}
          {counts === 'letters' && <LetterCount />}
          {counts === 'messages' && <MessageCount />}
        </Link>
      ))}
    </nav>
  );
}

function MoveCount() {
  const { data } = useQuery(moveQueries.list());
  return <Count of={data?.length} />;
}

function FlagCount() {
  const { data } = useQuery(flagQueries.list());
  return <Count of={data && waitingFor(data)} />;
}

/** Those that could not be delivered, or are tried in vain: they need somebody. */
function MessageCount() {
  const { data } = useQuery(messageQueries.counts());
  return <Count of={data && data.failed + data.stuck} />;
}

export function LetterCount() {
  const { data } = useQuery(letterQueries.count());
  return <Count of={data?.letters} />;
}

const Count = ({ of }: { of?: number }) =>
  of === undefined || of === 0 ? null : <span className={classes.count}>{of}</span>;
