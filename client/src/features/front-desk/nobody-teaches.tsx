import { Alert, Anchor, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { coverQueries } from '@/api/cover';
import type { Cover } from '@/api/types';
import { SessionLine } from '@/components/cover/session-line';
import { dialled, standingForDesk } from '@/components/cover/words';
import { Go } from '@/components/states/go';
import classes from '@/components/cover/cover.module.css';

/** Sessions that begin within a day and that nobody teaches, before anything else, with who could be rung. */
export function NobodyTeaches() {
  const cover = useQuery(coverQueries.open());
  const loud = (cover.data?.open ?? []).filter(({ isLoud }) => isLoud);
  if (loud.length === 0) return null;
  return (
    <Alert
      color="brick"
      variant="light"
      mb="md"
      role="alert"
      title={
        loud.length === 1
          ? 'Nobody teaches a class that begins within a day'
          : `Nobody teaches ${loud.length} classes that begin within a day`
      }
    >
      <ul className={classes.list}>
        {loud.map((one) => (
          <li key={one.session.id} className={classes.request} data-loud>
            <SessionLine session={one.session} order={2} />
            <Text size="sm">
              {one.insteadOf != null
                ? `${one.insteadOf} cannot teach it, and nobody has taken it yet.`
                : 'No instructor is named.'}{' '}
              <Go to="/desk" search={{ session: one.session.id }}>
                Who is booked
              </Go>
            </Text>
            <Rings cover={one} />
          </li>
        ))}
      </ul>
    </Alert>
  );
}

function Rings({ cover }: { cover: Cover }) {
  const some = cover.candidates.filter(({ standing }) => standing !== 'notFree');
  if (some.length === 0)
    return (
      <Text fw={600} mt="xs">
        Nobody who teaches here is free and qualified for it. Please ring the owner.
      </Text>
    );
  return (
    <>
      <Text fw={600} mt="xs">
        Please ring, in this order:
      </Text>
      <ol className={classes.reasons}>
        {some.map(({ instructorId, name, phone, standing, answer }) => (
          <li key={instructorId}>
            {name}
            {phone != null && phone !== '' && (
              <>
                {' '}
                <Anchor href={dialled(phone)} inherit>
                  {phone}
                </Anchor>
              </>
            )}
            {' · '}
            {answer === 'can' ? 'Says that she can' : standingForDesk[standing]}
          </li>
        ))}
      </ol>
    </>
  );
}
