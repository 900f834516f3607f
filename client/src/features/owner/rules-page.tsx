import { Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { catalogueQueries } from '@/api/catalogue';
import type { Policy, Stage } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import classes from './owner.module.css';

/** What holds here and where it comes from; changed in the studio's catalogue, not on this page. */
export function RulesPage() {
  const policies = useQuery(catalogueQueries.policies());
  const stages = useQuery(catalogueQueries.stages());
  return (
    <div className={classes.reading}>
      <Title>Rules in force</Title>
      <Text c="dimmed" mb="lg">
        Each with its source. Where it says “from memory”, nobody has yet read it in the text:
        verify it before you rely on it.
      </Text>
      <Title order={2} mb="xs">
        Stages
      </Title>
      <Asked query={stages} waiting={<Lines count={6} />}>
        {(list) => (
          <ul className={classes.list}>
            {list.map((stage) => (
              <li key={stage.code} className={classes.rule}>
                <strong>{stage.name}</strong>
                <div>
                  <Text>{spanOf(stage)}</Text>
                  <Text size="sm" c="dimmed">
                    {stage.source}
                  </Text>
                </div>
              </li>
            ))}
          </ul>
        )}
      </Asked>
      <Title order={2} mt="xl" mb="xs">
        Policies
      </Title>
      <Asked query={policies} waiting={<Lines count={8} />}>
        {(list) => (
          <ul className={classes.list}>
            {list.map((policy) => (
              <OnePolicy key={policy.code} policy={policy} />
            ))}
          </ul>
        )}
      </Asked>
    </div>
  );
}

function OnePolicy({ policy }: { policy: Policy }) {
  return (
    <li className={classes.rule}>
      <div>
        <strong>{policy.code.replaceAll('-', ' ')}</strong>
        <Text>{policy.value}</Text>
        {policy.value !== policy.default && (
          <Text size="sm" c="dimmed">
            by default {policy.default}
          </Text>
        )}
      </div>
      <div>
        <Text>{policy.means}</Text>
        <Text size="sm" c="dimmed">
          {policy.source}
        </Text>
      </div>
    </li>
  );
}

const spanOf = ({ countsFrom, fromDay, toDay }: Stage) => {
  const counted = countsFrom === 'birth' ? ' after the birth' : '';
  return toDay === null
    ? `from ${inWeeks(fromDay)}${counted} on`
    : `${inWeeks(fromDay)} to ${inWeeks(toDay)}${counted}`;
};

const inWeeks = (days: number) => `${Math.floor(days / 7)}w ${days % 7}d`;
