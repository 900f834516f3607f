import { Group, Select, Text, TextInput } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import type { CatalogueMovement, Rule } from '@/api/types';
import { Asked, Empty, Lines } from '@/components/states/asked';
import { SafetyNote } from '@/components/states/safety-note';
import { matchingMovements, type MovementFilter } from './filters';
import { RuleItem } from './rule-item';
import { Some } from './some';
import classes from './rules.module.css';

interface Props {
  filter: MovementFilter;
  onFilter: (filter: MovementFilter) => void;
}

/** Every movement: what it asks of a body, what is gentler, and which rules touch it. */
export function MovementsView({ filter, onFilter }: Props) {
  const catalogue = useQuery(catalogueQueries.movementsWithRules());
  return (
    <Asked query={catalogue} waiting={<Lines count={6} height={72} />}>
      {({ movements, rules, restrictions }) => {
        const found = matchingMovements(movements, filter);
        const ruleOf = new Map(rules.map((rule) => [rule.id, rule]));
        return (
          <>
            <Group align="flex-end" gap="sm" role="search" aria-label="Movements">
              <TextInput
                label="Find"
                placeholder="Name, trait, equipment"
                type="search"
                value={filter.find ?? ''}
                onChange={(event) =>
                  onFilter({ ...filter, find: event.currentTarget.value || undefined })
                }
                flex="1 1 14rem"
              />
              <Select
                label="Group"
                placeholder="Every group"
                clearable
                clearButtonProps={{ 'aria-label': 'Every group' }}
                data={[...new Set(movements.map(({ group }) => group))]}
                value={filter.group ?? null}
                onChange={(group) => onFilter({ ...filter, group: group ?? undefined })}
                flex="1 1 11rem"
              />
              <Select
                label="Position or trait"
                placeholder="Any"
                searchable
                clearable
                clearButtonProps={{ 'aria-label': 'Any position or trait' }}
                data={restrictions.map(({ code, name }) => ({ value: code, label: name }))}
                value={filter.trait ?? null}
                onChange={(trait) => onFilter({ ...filter, trait: trait ?? undefined })}
                flex="1 1 12rem"
              />
            </Group>
            <Text c="dimmed" my="sm" role="status">
              {found.length === 1 ? '1 movement' : `${found.length} movements`}
            </Text>
            {found.length === 0 && (
              <Empty title="No such movement">Try fewer words, or another group.</Empty>
            )}
            <Some of={JSON.stringify(filter)} all={found} what="movements">
              {(some) => (
                <ul className={classes.list}>
                  {some.map((movement) => (
                    <OneMovement
                      key={movement.code}
                      movement={movement}
                      rules={movement.rules
                        .map((id) => ruleOf.get(id))
                        .filter((rule) => rule !== undefined)}
                    />
                  ))}
                </ul>
              )}
            </Some>
            <SafetyNote />
          </>
        );
      }}
    </Asked>
  );
}

interface OneProps {
  movement: CatalogueMovement;
  rules: readonly Rule[];
}

function OneMovement({ movement, rules }: OneProps) {
  const { name, group, position, traits, effort, equipment, cue, options } = movement;
  return (
    <li className={classes.movement}>
      <div>
        <Text fw={600} size="lg">
          {name}
        </Text>
        <Text size="sm" c="dimmed">
          {group}
        </Text>
      </div>
      <div>
        <Text>{cue}</Text>
        <dl className={classes.words}>
          <dt>Asks</dt>
          <dd>
            {[position.name, ...traits.map((trait) => trait.name)].join(' · ')}; effort {effort} of
            10
          </dd>
          {equipment.length > 0 && (
            <>
              <dt>Needs</dt>
              <dd>{equipment.join(', ')}</dd>
            </>
          )}
          <dt>Gentler</dt>
          <dd>
            {options.length === 0
              ? 'nothing is gentler here'
              : options.map((option) => option.name).join(', then ')}
          </dd>
        </dl>
        {rules.length > 0 && <Touching rules={rules} />}
      </div>
    </li>
  );
}

/** Written out once it is opened: together they are ten times as long as the list itself. */
function Touching({ rules }: { rules: readonly Rule[] }) {
  const [open, setOpen] = useState(false);
  return (
    <details className={classes.more} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {rules.length === 1 ? '1 rule touches it' : `${rules.length} rules touch it`}
      </summary>
      {open && (
        <ul className={classes.list}>
          {rules.map((rule) => (
            <RuleItem key={rule.id} rule={rule} />
          ))}
        </ul>
      )}
    </details>
  );
}
