import { Alert, List, Text, Title, VisuallyHidden } from '@mantine/core';
import type { AssignmentChange, AssignmentGap, AssignmentResult, TermLoad } from '@/api/types';
import { Needs } from '@/components/verdict/mark';
import { count, hours, sessionWords } from './words';
import classes from './assign.module.css';

/** What was found beside the plan as it stands: nobody, per instructor, session by session. */
export function Comparison({ result }: { result: AssignmentResult }) {
  return (
    <>
      <Text fw={600}>
        {count(result.sessions, 'session')}: {result.unstaffedBefore} with nobody today,{' '}
        {result.unstaffedAfter} then. {count(result.changes.length, 'change')}.
      </Text>
      {result.contradictions.length > 0 && (
        <Alert
          color="amber"
          variant="light"
          mt="md"
          title="These were not to change, and contradict"
        >
          <List>
            {result.contradictions.map((words) => (
              <List.Item key={words}>{words}</List.Item>
            ))}
          </List>
        </Alert>
      )}
      <section className={classes.part} aria-labelledby="nobody">
        <Title order={2} id="nobody">
          With nobody
        </Title>
        {result.unstaffed.length === 0 ? (
          <Text>Every session that was to be given to somebody has somebody.</Text>
        ) : (
          <ul className={classes.list}>
            {result.unstaffed.map((gap) => (
              <Gap key={gap.session.id} gap={gap} />
            ))}
          </ul>
        )}
      </section>
      <section className={classes.part} aria-labelledby="loads">
        <Title order={2} id="loads">
          Who teaches how much
        </Title>
        <Loads loads={result.loads} />
      </section>
      <section className={classes.part} aria-labelledby="changes">
        <Title order={2} id="changes">
          What changes
        </Title>
        {result.changes.length === 0 ? (
          <Text>Nothing: the plan as it stands is as good as any.</Text>
        ) : (
          <ul className={classes.list}>
            {result.changes.map((change) => (
              <Change key={change.session.id} change={change} />
            ))}
          </ul>
        )}
      </section>
    </>
  );
}

const Where = ({ session }: Pick<AssignmentChange, 'session'>) => (
  <Text c="dimmed" size="sm">
    {session.roomName}, {session.locationName}
    {session.seatsTaken > 0 && `, ${count(session.seatsTaken, 'person', 'people')} booked`}
  </Text>
);

function Gap({ gap: { session, words, people } }: { gap: AssignmentGap }) {
  return (
    <li>
      <Needs tone="stop">{sessionWords(session)}</Needs>
      <Where session={session} />
      <Text>{words}</Text>
      {people.length > 0 && (
        <details>
          <summary>Person by person</summary>
          <List size="sm">
            {people.map((person) => (
              <List.Item key={person.instructorId}>
                {person.couldAlone && <strong>{person.name} could, but: </strong>}
                {person.words.join(' ')}
              </List.Item>
            ))}
          </List>
        </details>
      )}
    </li>
  );
}

function Change({ change: { session, before, after } }: { change: AssignmentChange }) {
  return (
    <li>
      <Text fw={600}>{sessionWords(session)}</Text>
      <Text>
        {before ?? 'Nobody'} <span aria-hidden>→</span>
        <VisuallyHidden> then </VisuallyHidden> <strong>{after ?? 'nobody'}</strong>
      </Text>
      <Where session={session} />
    </li>
  );
}

function Loads({ loads }: { loads: TermLoad[] }) {
  const most = Math.max(
    1,
    ...loads.flatMap(({ before, after }) => [before.minutes, after.minutes]),
  );
  return (
    <div className={classes.scroll} tabIndex={0} role="region" aria-labelledby="loads">
      <table className={classes.loads}>
        <thead>
          <tr>
            <th scope="col">Instructor</th>
            <th scope="col">Today</th>
            <th scope="col">Then</th>
            <th scope="col">Difference</th>
            <th scope="col">Today dashed, then filled</th>
          </tr>
        </thead>
        <tbody>
          {loads.map(({ instructorId, name, before, after }) => (
            <tr key={instructorId}>
              <th scope="row">{name}</th>
              <td>
                <Amount {...before} />
              </td>
              <td>
                <Amount {...after} />
              </td>
              <td>{differs(after.minutes - before.minutes)}</td>
              <td>
                <div className={classes.bars} aria-hidden>
                  <div
                    className={classes.bar}
                    data-before
                    style={{ width: `${(before.minutes / most) * 100}%` }}
                  />
                  <div
                    className={classes.bar}
                    style={{ width: `${(after.minutes / most) * 100}%` }}
                  />
                </div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

const Amount = ({ sessions, minutes, weeksOver }: TermLoad['before']) => (
  <>
    {hours(minutes)}
    <Text size="sm" c="dimmed">
      {count(sessions, 'session')}
    </Text>
    {weeksOver > 0 && <Text size="sm">{count(weeksOver, 'week')} over what was agreed</Text>}
  </>
);

const differs = (minutes: number) =>
  minutes === 0 ? 'the same' : `${hours(Math.abs(minutes))} ${minutes > 0 ? 'more' : 'less'}`;
