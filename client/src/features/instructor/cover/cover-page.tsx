import { Button, Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { coverQueries, useAnswerCover, useTakeCover, useWithdrawCover } from '@/api/cover';
import type { Cover, CoverAsked, MyCover } from '@/api/types';
import { DaysAway } from '@/components/cover/days-away';
import { SessionLine } from '@/components/cover/session-line';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { tell, tellRefused } from '@/components/states/told';
import { Needs } from '@/components/verdict/mark';
import classes from '@/components/cover/cover.module.css';

/** Requests of colleagues she could take, her own, and days on which she cannot come. */
export function TeachCoverPage() {
  const cover = useQuery(coverQueries.mine());
  return (
    <>
      <Title mb="sm">Cover</Title>
      <Asked query={cover} waiting={<Lines count={3} height={120} />}>
        {(data) => (
          <>
            <section aria-labelledby="asked">
              <Title order={2} id="asked" mb="xs">
                You are asked
              </Title>
              {data.asked.length === 0 ? (
                <Empty title="Nobody needs you just now">
                  When a colleague cannot teach and you could, it stands here.
                </Empty>
              ) : (
                <ul className={classes.list}>
                  {data.asked.map((one) => (
                    <Request key={one.session.id} asked={one} settles={data.settles} />
                  ))}
                </ul>
              )}
            </section>
            <section aria-labelledby="mine">
              <Title order={2} id="mine" mt="xl" mb="xs">
                You have asked
              </Title>
              {data.mine.length === 0 ? (
                <Text c="dimmed">
                  Nothing is open. On a session of yours you can say that you can’t take it.
                </Text>
              ) : (
                <ul className={classes.list}>
                  {data.mine.map((one) => (
                    <Mine key={one.session.id} cover={one} />
                  ))}
                </ul>
              )}
            </section>
            <section aria-labelledby="away">
              <Title order={2} id="away" mt="xl" mb="xs">
                I am ill for some days
              </Title>
              <DaysAway />
            </section>
          </>
        )}
      </Asked>
    </>
  );
}

function Request({ asked, settles }: { asked: CoverAsked; settles: MyCover['settles'] }) {
  const answer = useAnswerCover();
  const take = useTakeCover();
  const { session } = asked;
  const say = (said: 'can' | 'cannot') =>
    answer.mutate(
      { id: session.id, answer: said },
      {
        onSuccess: () =>
          tell(said === 'can' ? 'The owner is told that you can.' : 'Noted: you cannot.'),
        onError: tellRefused,
      },
    );
  const takes = settles === 'instructors' && asked.mayTake;
  return (
    <li className={classes.request}>
      <SessionLine session={session} />
      <Text size="sm" mt={4}>
        {asked.insteadOf != null
          ? `${asked.insteadOf} cannot teach it.`
          : 'Nobody was to teach it.'}
      </Text>
      {asked.against.map((words) => (
        <Needs key={words} tone="mind">
          {words}
        </Needs>
      ))}
      <ul className={classes.reasons}>
        {asked.reasons.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      <Group mt="sm" gap="xs">
        {takes ? (
          <Button
            loading={take.isPending}
            onClick={() =>
              take.mutate(
                { id: session.id, anyway: asked.against.length > 0 },
                {
                  onSuccess: () => tell(`${session.className} is yours. Everybody is told.`),
                  onError: tellRefused,
                },
              )
            }
          >
            {asked.against.length > 0 ? 'Take it all the same' : 'Take it'}
          </Button>
        ) : (
          <Button
            variant={asked.answer === 'can' ? 'filled' : 'default'}
            aria-pressed={asked.answer === 'can'}
            loading={answer.isPending}
            onClick={() => say('can')}
          >
            I can
          </Button>
        )}
        <Button
          variant={asked.answer === 'cannot' ? 'filled' : 'default'}
          aria-pressed={asked.answer === 'cannot'}
          disabled={answer.isPending}
          onClick={() => say('cannot')}
        >
          I can’t
        </Button>
      </Group>
      {asked.answer != null && (
        <Text size="sm" mt="xs">
          {asked.answer === 'can'
            ? 'You said you can. The owner settles it; you may change your answer until then.'
            : 'You said you cannot. You may change your answer until it is settled.'}
        </Text>
      )}
    </li>
  );
}

function Mine({ cover }: { cover: Cover }) {
  const withdraw = useWithdrawCover();
  const can = cover.candidates.filter(({ answer }) => answer === 'can').map(({ name }) => name);
  return (
    <li className={classes.request}>
      <SessionLine session={cover.session} />
      <Text size="sm" mt={4}>
        {can.length > 0
          ? `Can take it: ${can.join(', ')}. It is not settled yet.`
          : 'Nobody has said yet that she can.'}
      </Text>
      <Button
        mt="sm"
        variant="default"
        loading={withdraw.isPending}
        onClick={() => withdraw.mutate(cover.session.id, { onError: tellRefused })}
      >
        I teach it after all
      </Button>
    </li>
  );
}
