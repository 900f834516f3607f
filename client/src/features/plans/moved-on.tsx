import { Alert, Button, Group, Modal, Text } from '@mantine/core';
import { useState } from 'react';
import type { ClassPlan, SessionPlan } from '@/api/types';
import { PlanList } from './plan-list';
import type { DraftDoing } from './use-draft';
import { baseOf } from './use-draft';
import { wantedOf } from './who';

interface Props {
  ofClass: ClassPlan;
  ofSession?: SessionPlan;
  doing: DraftDoing;
}

/** Somebody else saved while this draft was being made: nothing of either is lost. */
export function MovedOn({ ofClass, ofSession, doing }: Props) {
  const [looking, setLooking] = useState(false);
  const { moved, change, draft } = doing;
  if (moved === null) return null;
  const theirs = moved === 'session' && ofSession !== undefined ? ofSession : ofClass;
  const by = theirs.versions[0]?.madeBy ?? 'Somebody else';
  const now = baseOf({ ofClass, ofSession });
  const accept = () =>
    change({
      do: 'accept',
      classVersion: now.classVersion,
      sessionVersions: { ...draft.base.sessionVersions, ...now.sessionVersions },
    });
  return (
    <Alert
      color="amber"
      variant="light"
      role="alert"
      mb="md"
      title={`${by} changed ${moved === 'class' ? 'the class plan' : 'the plan of this session'} meanwhile`}
    >
      <Text>Your draft is still here. Look at theirs, then keep yours or take theirs.</Text>
      <Group gap="xs" mt="sm">
        <Button size="xs" variant="default" onClick={() => setLooking(true)}>
          Look at theirs
        </Button>
        <Button size="xs" variant="default" onClick={accept}>
          Go on with mine
        </Button>
        <Button
          size="xs"
          variant="default"
          onClick={() => {
            accept();
            change({ do: 'replace', items: wantedOf(theirs.items) });
          }}
        >
          Take theirs
        </Button>
      </Group>
      <Modal opened={looking} onClose={() => setLooking(false)} title={`As ${by} saved it`}>
        <PlanList items={theirs.items} />
      </Modal>
    </Alert>
  );
}
