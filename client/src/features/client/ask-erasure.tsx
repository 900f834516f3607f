import { Alert, Button, Group, Modal, Text, Title } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { erasureQueries, useAskForErasure, useTakeBackErasure } from '@/api/records';
import type { ErasurePlan } from '@/api/types';
import { PlanWords } from '@/components/record/erasure-plan';
import record from '@/components/record/record.module.css';
import { Asked, Refused } from '@/components/states/asked';
import { momentWords } from '@/components/time/zone';

/** She asks to be erased; the owner carries it out, and until then she may take it back. */
export function AskErasure({ clientId }: { clientId: number }) {
  const plan = useQuery(erasureQueries.plan(clientId));
  return (
    <section className={`${record.section} ${record.screen}`} aria-labelledby="erasure">
      <Title order={2} id="erasure">
        Have it erased
      </Title>
      <Asked query={plan}>
        {(data) =>
          data.askedAt == null ? (
            <Ask clientId={clientId} plan={data} />
          ) : (
            <Waits clientId={clientId} askedAt={data.askedAt} />
          )
        }
      </Asked>
    </section>
  );
}

function Ask({ clientId, plan }: { clientId: number; plan: ErasurePlan }) {
  const [opened, { open, close }] = useDisclosure(false);
  const ask = useAskForErasure(clientId);
  return (
    <>
      <Text my="xs">
        You can ask the studio to erase what it holds about you. The owner carries it out. You then
        have no account here any more and cannot book; you may come back as a new client at any
        time. Download your record first if you want to keep it.
      </Text>
      <Button variant="default" onClick={open}>
        Ask to be erased
      </Button>
      <Modal opened={opened} onClose={close} title="Ask to be erased" size="lg">
        <Text>This is what would be done today. It is done once the owner carries it out.</Text>
        <PlanWords plan={plan} />
        <Refused error={ask.error} />
        <Group mt="lg">
          <Button
            color="brick"
            loading={ask.isPending}
            onClick={() => void ask.mutateAsync().then(close, () => undefined)}
          >
            Yes, ask for it
          </Button>
          <Button variant="default" onClick={close}>
            Not now
          </Button>
        </Group>
      </Modal>
    </>
  );
}

function Waits({ clientId, askedAt }: { clientId: number; askedAt: string }) {
  const takeBack = useTakeBackErasure(clientId);
  return (
    <Alert color="pine" variant="light" mt="xs" title={`You asked on ${momentWords(askedAt)}`}>
      <Text>
        The owner sees it and carries it out. Until then everything works as before, and you can
        take it back.
      </Text>
      <Refused error={takeBack.error} />
      <Button
        mt="sm"
        variant="default"
        loading={takeBack.isPending}
        onClick={() => takeBack.mutate()}
      >
        Take it back
      </Button>
    </Alert>
  );
}
