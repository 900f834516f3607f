import { Button, Checkbox, Group, Select, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { coverQueries, useAskForCover, useWithdrawCover } from '@/api/cover';
import { staffQueries } from '@/api/staff';
import type { Cover } from '@/api/types';
import { DaysAway } from '@/components/cover/days-away';
import { SessionLine } from '@/components/cover/session-line';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { tell, tellRefused } from '@/components/states/told';
import { Needs } from '@/components/verdict/mark';
import { Candidates } from './candidates';
import { Together } from './together';
import classes from '@/components/cover/cover.module.css';

/** What nobody teaches, the soonest first; each settled in one press, or several worked out together. */
export function CoverPage() {
  const cover = useQuery(coverQueries.open());
  return (
    <>
      <Title>Cover</Title>
      <Text c="dimmed" mb="lg" maw="46rem">
        Sessions that nobody teaches, the soonest first. Giving one to somebody keeps every booking
        and tells everybody concerned.
      </Text>
      <Asked query={cover} waiting={<Lines count={4} height={120} />}>
        {({ open, settles }) => (
          <>
            {settles === 'instructors' && (
              <Text mb="md">
                Here instructors settle cover themselves; you may settle it all the same.
              </Text>
            )}
            {open.length === 0 ? (
              <Empty title="Every session has somebody">
                When an instructor asks for cover, it stands here.
              </Empty>
            ) : (
              <Open open={open} />
            )}
          </>
        )}
      </Asked>
      <SomebodyIll />
    </>
  );
}

function Open({ open }: { open: readonly Cover[] }) {
  const [left, setLeft] = useState<readonly number[]>([]);
  const chosen = open.map(({ session }) => session.id).filter((id) => !left.includes(id));
  return (
    <>
      <Together sessions={chosen} />
      <ul className={classes.list}>
        {open.map((one) => (
          <Request
            key={one.session.id}
            cover={one}
            chosen={chosen.includes(one.session.id)}
            onChosen={(yes) =>
              setLeft(yes ? left.filter((id) => id !== one.session.id) : [...left, one.session.id])
            }
          />
        ))}
      </ul>
    </>
  );
}

interface RequestProps {
  cover: Cover;
  chosen: boolean;
  onChosen: (chosen: boolean) => void;
}

function Request({ cover, chosen, onChosen }: RequestProps) {
  const ask = useAskForCover();
  const withdraw = useWithdrawCover();
  const { session } = cover;
  return (
    <li className={classes.request} data-loud={cover.isLoud || undefined}>
      <Group justify="space-between" align="flex-start" gap="sm">
        <div>
          <SessionLine session={session} order={2} />
          <Text size="sm" mt={4}>
            {cover.insteadOf != null
              ? `${cover.insteadOf} cannot teach it.`
              : 'No instructor is named.'}
          </Text>
          {cover.isLoud && <Needs tone="stop">Begins within a day</Needs>}
        </div>
        <Group gap="sm">
          {cover.isAsked ? (
            <Button
              variant="default"
              loading={withdraw.isPending}
              aria-label={`Take the request back: ${session.className}`}
              onClick={() => withdraw.mutate(session.id, { onError: tellRefused })}
            >
              Take the request back
            </Button>
          ) : (
            <Button
              variant="default"
              loading={ask.isPending}
              aria-label={`Ask the colleagues: ${session.className}`}
              onClick={() =>
                ask.mutate(session.id, {
                  onSuccess: ({ asked }) => tell(`${asked} are asked.`),
                  onError: tellRefused,
                })
              }
            >
              Ask the colleagues
            </Button>
          )}
          <Checkbox
            label="Work out together"
            aria-label={`Work out together: ${session.className}, ${session.on}`}
            checked={chosen}
            onChange={(event) => onChosen(event.currentTarget.checked)}
          />
        </Group>
      </Group>
      <Candidates cover={cover} />
    </li>
  );
}

function SomebodyIll() {
  const staff = useQuery(staffQueries.instructors());
  const [who, setWho] = useState<string | null>(null);
  return (
    <section aria-labelledby="ill">
      <Title order={2} id="ill" mt="xl" mb="xs">
        Somebody is ill
      </Title>
      <Select
        label="Who"
        placeholder="Choose an instructor"
        maw="20rem"
        mb="sm"
        searchable
        value={who}
        onChange={setWho}
        data={(staff.data ?? []).map(({ id, name }) => ({ value: String(id), label: name }))}
      />
      {who !== null && <DaysAway key={who} instructorId={Number(who)} />}
    </section>
  );
}
