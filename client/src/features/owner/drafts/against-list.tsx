import { Anchor, Text } from '@mantine/core';
import type { Draft, DraftSession, TimetableConflict } from '@/api/types';
import { Needs } from '@/components/verdict/mark';
import type { Named } from './words';
import classes from './board.module.css';

interface Props {
  draft: Draft;
  sessions: readonly DraftSession[];
  conflicts: readonly TimetableConflict[];
  named: Named;
  open: (session: DraftSession) => void;
}

/** What stands against the week that is shown, each named, with a way to what it is about. */
export function AgainstList({ draft, sessions, conflicts, named, open }: Props) {
  const keys = new Set(sessions.map(({ key }) => key));
  const here = conflicts.filter((conflict) => conflict.keys.some((key) => keys.has(key)));
  const elsewhere = conflicts.length - here.length;
  if (conflicts.length === 0)
    return (
      <Text c="dimmed" mb="xs">
        Nothing stands against this draft.
      </Text>
    );
  return (
    <details open={here.length <= 4} style={{ marginBottom: '0.5rem' }}>
      <summary>
        <b>
          {here.length === 0
            ? 'Nothing stands against this week'
            : `${here.length === 1 ? '1 thing stands' : `${here.length} things stand`} against this week`}
        </b>
        {elsewhere > 0 && `, ${elsewhere} against other weeks of the draft`}
      </summary>
      <ul className={classes.against}>
        {here.map((conflict) => {
          const about = draft.sessions.find(({ key }) => conflict.keys.includes(key));
          return (
            <li key={conflict.words}>
              <Needs tone={conflict.isHard ? 'stop' : 'mind'}>
                {!conflict.isHard
                  ? 'To think about: '
                  : conflict.isNew
                    ? 'Cannot be: '
                    : 'Stands already: '}
                {conflict.words}
              </Needs>{' '}
              {!conflict.isNew && (
                <Text span size="sm" c="dimmed">
                  It stands so in the timetable too.{' '}
                </Text>
              )}
              {about && (
                <Anchor component="button" type="button" fz="sm" onClick={() => open(about)}>
                  Open {named.className(about)}
                </Anchor>
              )}
            </li>
          );
        })}
      </ul>
    </details>
  );
}
