import { Button, Group, Modal, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState, type Dispatch } from 'react';
import { planQueries } from '@/api/plans';
import type { ClassPlan } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import { fullDate } from '@/components/time/days';
import type { Change } from './draft';
import { PlanList } from './plan-list';
import { wantedOf } from './who';
import classes from './plans.module.css';

interface Props {
  ofClass: ClassPlan;
  change: Dispatch<Change>;
  onSaid: (words: string) => void;
}

const shown = 5;

/** Every version of the class plan; an old one can be looked at and brought back as a draft. */
export function Versions({ ofClass, change, onSaid }: Props) {
  const [looking, setLooking] = useState<number | null>(null);
  const [all, setAll] = useState(false);
  const { versions, classId } = ofClass;
  if (versions.length === 0) return null;
  const list = all ? versions : versions.slice(0, shown);
  return (
    <section aria-labelledby="versions">
      <Title order={2} id="versions" mb={4}>
        Versions of the class plan
      </Title>
      <ul className={classes.versions}>
        {list.map(({ version, madeAt, madeBy }) => (
          <li key={version}>
            <span>
              <strong>Version {version}</strong>
              {version === ofClass.version && ', in force'}
              <Text size="sm" c="dimmed">
                {fullDate(madeAt.slice(0, 10))}
                {madeBy != null && `, ${madeBy}`}
              </Text>
            </span>
            <Button
              size="xs"
              variant="default"
              aria-label={`Look at version ${version}`}
              onClick={() => setLooking(version)}
            >
              Look
            </Button>
          </li>
        ))}
      </ul>
      {versions.length > shown && !all && (
        <Button size="xs" variant="subtle" onClick={() => setAll(true)}>
          Show all {versions.length}
        </Button>
      )}
      <Modal
        opened={looking !== null}
        onClose={() => setLooking(null)}
        title={`Version ${looking ?? ''}`}
      >
        {looking !== null && (
          <Looked
            classId={classId}
            version={looking}
            onTake={(items) => {
              change({ do: 'replace', items });
              onSaid(`Version ${looking} is back as a draft.`);
              setLooking(null);
            }}
          />
        )}
      </Modal>
    </section>
  );
}

interface LookedProps {
  classId: number;
  version: number;
  onTake: (items: ReturnType<typeof wantedOf>) => void;
}

function Looked({ classId, version, onTake }: LookedProps) {
  const query = useQuery(planQueries.version(classId, version));
  return (
    <Asked query={query} waiting={<Lines count={8} height={24} />}>
      {({ items }) => (
        <>
          <PlanList items={items} />
          <Group mt="md">
            <Button onClick={() => onTake(wantedOf(items))}>Bring it back as a draft</Button>
          </Group>
        </>
      )}
    </Asked>
  );
}
