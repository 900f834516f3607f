import { Checkbox, Group, Select, Text, TextInput } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { catalogueQueries } from '@/api/catalogue';
import type { Rule } from '@/api/types';
import { matchingRules, outcomes, type RuleFilter } from '@/components/rules/filters';
import { outcomeWords } from '@/components/rules/outcome-mark';
import { RuleItem } from '@/components/rules/rule-item';
import { Some } from '@/components/rules/some';
import { Asked, Empty, Lines } from '@/components/states/asked';
import classes from './owner-rules.module.css';

const route = getRouteApi('/inside/studio/rules/');

/** Every rule of every kind, each with its source. */
export function RulesPage() {
  const rules = useQuery(catalogueQueries.rules());
  const filter = route.useSearch();
  const navigate = route.useNavigate();
  const show = (search: RuleFilter) => void navigate({ search, replace: true });
  return (
    <>
      <Text c="dimmed" mb="md" maw="46rem">
        Each with its source. Where it says “from memory”, nobody has yet read it in the text:
        verify it before you rely on it.
      </Text>
      <Asked query={rules} waiting={<Lines count={6} height={72} />}>
        {(list) => {
          const found = matchingRules(list, filter);
          return (
            <>
              <Filters filter={filter} onFilter={show} rules={list} />
              <Text c="dimmed" my="sm" role="status">
                {found.length === 1 ? '1 rule' : `${found.length} rules`} of {list.length}
              </Text>
              {found.length === 0 && (
                <Empty title="No such rule">Try fewer words, or take a filter away.</Empty>
              )}
              <Some of={JSON.stringify(filter)} all={found} what="rules">
                {(some) => (
                  <ul className={classes.list} aria-label="Rules found">
                    {some.map((rule) => (
                      <RuleItem key={`${rule.about}${rule.id}`} rule={rule} />
                    ))}
                  </ul>
                )}
              </Some>
            </>
          );
        }}
      </Asked>
    </>
  );
}

interface FiltersProps {
  filter: RuleFilter;
  onFilter: (filter: RuleFilter) => void;
  rules: readonly Rule[];
}

function Filters({ filter, onFilter, rules }: FiltersProps) {
  const { data: stages = [] } = useQuery(catalogueQueries.stages());
  const { data: factors = [] } = useQuery(catalogueQueries.factors());
  const { data: catalogue } = useQuery(catalogueQueries.movementsWithRules());
  const used = new Set(rules.map(({ factor }) => factor));
  return (
    <Group align="flex-end" gap="sm" role="search" aria-label="Rules">
      <TextInput
        label="Find"
        placeholder="lying on the back, plank, letter …"
        type="search"
        value={filter.find ?? ''}
        onChange={(event) => onFilter({ ...filter, find: event.currentTarget.value || undefined })}
        flex="2 1 16rem"
      />
      <Select
        label="Stage"
        placeholder="Every stage"
        clearable
        clearButtonProps={{ 'aria-label': 'Every stage' }}
        data={stages.map(({ code, name }) => ({ value: code, label: name }))}
        value={filter.stage ?? null}
        onChange={(stage) => onFilter({ ...filter, stage: stage ?? undefined })}
        flex="1 1 10rem"
      />
      <Select
        label="What is known of her"
        placeholder="Anything"
        searchable
        clearable
        clearButtonProps={{ 'aria-label': 'Anything known' }}
        data={factors
          .filter(({ code }) => used.has(code))
          .map(({ code, name }) => ({ value: code, label: name }))}
        value={filter.factor ?? null}
        onChange={(factor) => onFilter({ ...filter, factor: factor ?? undefined })}
        flex="1 1 12rem"
      />
      <Select
        label="Position or trait"
        placeholder="Any"
        searchable
        clearable
        clearButtonProps={{ 'aria-label': 'Any position or trait' }}
        data={(catalogue?.restrictions ?? []).map(({ code, name }) => ({
          value: code,
          label: name,
        }))}
        value={filter.trait ?? null}
        onChange={(trait) => onFilter({ ...filter, trait: trait ?? undefined })}
        flex="1 1 11rem"
      />
      <Select
        label="Comes to"
        placeholder="Anything"
        clearable
        clearButtonProps={{ 'aria-label': 'Any outcome' }}
        data={outcomes.map((outcome) => ({ value: outcome, label: outcomeWords[outcome] }))}
        value={filter.outcome ?? null}
        onChange={(value) =>
          onFilter({ ...filter, outcome: outcomes.find((outcome) => outcome === value) })
        }
        flex="1 1 9rem"
      />
      <Checkbox
        label="Only from memory"
        checked={filter.memory === true}
        onChange={(event) =>
          onFilter({ ...filter, memory: event.currentTarget.checked ? true : undefined })
        }
        mb={8}
      />
    </Group>
  );
}
