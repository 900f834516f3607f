import { Button, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import type { Policy, PolicyChange } from '@/api/types';
import { Some } from '@/components/rules/some';
import { SourceLine } from '@/components/rules/source-line';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { momentWords } from '@/components/time/zone';
import { Needs } from '@/components/verdict/mark';
import { PolicyModal } from './policy-modal';
import { nameOf } from './policy-values';
import classes from './owner-rules.module.css';

/** What the studio chooses where sources disagree; every change stays on record. */
export function PoliciesPage() {
  const policies = useQuery(catalogueQueries.policies());
  const changes = useQuery(catalogueQueries.policyChanges());
  const [chosen, setChosen] = useState<Policy | null>(null);
  return (
    <>
      <Text c="dimmed" mb="md" maw="46rem">
        Where sources disagree the studio chooses, and the default is the more cautious. Before
        anything is saved you see whose bookings it changes.
      </Text>
      <Asked query={policies} waiting={<Lines count={8} height={72} />}>
        {(list) => (
          <ul className={classes.list}>
            {list.map((policy) => (
              <OnePolicy key={policy.code} policy={policy} onChange={() => setChosen(policy)} />
            ))}
          </ul>
        )}
      </Asked>
      <Title order={2} mt="xl">
        Changes
      </Title>
      <Asked query={changes} waiting={<Lines count={3} />}>
        {(list) =>
          list.length === 0 ? (
            <Empty title="No policy was changed yet">
              Each change is kept here with who made it, when and why.
            </Empty>
          ) : (
            <Some of="changes" all={list} what="changes">
              {(some) => (
                <ul className={classes.list} aria-label="Changes of policies">
                  {some.map((change) => (
                    <OneChange key={change.id} change={change} />
                  ))}
                </ul>
              )}
            </Some>
          )
        }
      </Asked>
      {chosen && <PolicyModal policy={chosen} onClose={() => setChosen(null)} />}
    </>
  );
}

function OnePolicy({ policy, onChange }: { policy: Policy; onChange: () => void }) {
  const { code, value, default: standard, means, source, lessCautious } = policy;
  return (
    <li className={classes.policy}>
      <div>
        <strong>{nameOf(code)}</strong>
        <Text>{value}</Text>
        {value !== standard && (
          <Text size="sm" c="dimmed">
            by default {standard}
          </Text>
        )}
        {lessCautious && <Needs tone="mind">Less cautious than the default</Needs>}
      </div>
      <div>
        <Text>{means}</Text>
        <SourceLine source={{ cite: source, fromMemory: source.endsWith('; from memory') }} />
      </div>
      <Button variant="default" onClick={onChange} aria-label={`Change: ${nameOf(code)}`}>
        Change
      </Button>
    </li>
  );
}

const OneChange = ({ change }: { change: PolicyChange }) => (
  <li className={classes.row}>
    <div>
      <strong>{nameOf(change.code)}</strong>
    </div>
    <Text>
      {change.from} became {change.to}
      {change.byDefault && ' (the default)'}
    </Text>
    <div>
      <Text size="sm">
        {momentWords(change.madeAt)}, {change.madeBy ?? 'nobody signed in'}
      </Text>
      {change.why !== '' && (
        <Text size="sm" c="dimmed">
          {change.why}
        </Text>
      )}
    </div>
  </li>
);
