import { Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { catalogueQueries } from '@/api/catalogue';
import type { RuleSource, Stage } from '@/api/types';
import { Some } from '@/components/rules/some';
import { SourceLine } from '@/components/rules/source-line';
import { Asked, Lines } from '@/components/states/asked';
import { Needs } from '@/components/verdict/mark';
import classes from './owner-rules.module.css';

/** What everything rests on: stages, sources, and which published row became which rule. */
export function SourcesPage() {
  const stages = useQuery(catalogueQueries.stages());
  const sources = useQuery(catalogueQueries.sources());
  const coverage = useQuery(catalogueQueries.coverage());
  return (
    <>
      <Title order={2} mt="sm">
        Stages
      </Title>
      <Asked query={stages} waiting={<Lines count={6} />}>
        {(list) => (
          <ul className={classes.list}>
            {list.map((stage) => (
              <li key={stage.code} className={classes.row}>
                <strong>{stage.name}</strong>
                <Text>{spanOf(stage)}</Text>
                <SourceLine
                  source={{
                    cite: stage.source,
                    fromMemory: stage.source.endsWith('; from memory'),
                  }}
                />
              </li>
            ))}
          </ul>
        )}
      </Asked>
      <Title order={2} mt="xl">
        Sources
      </Title>
      <Asked query={sources} waiting={<Lines count={8} />}>
        {(list) => (
          <ul className={classes.list}>
            {list.map((source) => (
              <OneSource key={source.id} source={source} />
            ))}
          </ul>
        )}
      </Asked>
      <Title order={2} mt="xl">
        Published rows
      </Title>
      <Text c="dimmed">What each became here, or why nothing restates it.</Text>
      <Asked query={coverage} waiting={<Lines count={8} />}>
        {(list) => (
          <Some of="coverage" all={list} what="rows">
            {(some) => (
              <ul className={classes.list}>
                {some.map(({ file, row, rules, gone, whyNot }) => (
                  <li key={`${file}${row}`} className={classes.row}>
                    <strong>{row}</strong>
                    <Text size="sm" c="dimmed">
                      {file}
                    </Text>
                    <div>
                      <Text>{rules.length > 0 ? rules.join(', ') : `Not covered: ${whyNot}`}</Text>
                      {gone.length > 0 && (
                        <Needs tone="mind">No longer there: {gone.join(', ')}</Needs>
                      )}
                    </div>
                  </li>
                ))}
              </ul>
            )}
          </Some>
        )}
      </Asked>
    </>
  );
}

const OneSource = ({ source: { id, cite, verification, rules } }: { source: RuleSource }) => (
  <li className={classes.row}>
    <strong>{id}</strong>
    <SourceLine source={{ cite, fromMemory: verification === 'fromMemory' }} />
    <Text size="sm">
      {rules.length === 0 ? 'No rule of its own' : `${rules.length} rules: ${rules.join(', ')}`}
    </Text>
  </li>
);

const spanOf = ({ countsFrom, fromDay, toDay }: Stage) => {
  const counted = countsFrom === 'birth' ? ' after the birth' : '';
  return toDay === null
    ? `from ${inWeeks(fromDay)}${counted} on`
    : `${inWeeks(fromDay)} to ${inWeeks(toDay)}${counted}`;
};

const inWeeks = (days: number) => `${Math.floor(days / 7)}w ${days % 7}d`;
