import { Button, Select, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useSetWishes, type Wish } from '@/api/staff';
import { catalogueQueries } from '@/api/catalogue';
import { Refused } from '@/components/states/asked';
import classes from './staff.module.css';
import { weekdays } from './words';

const weights = [
  { value: '2', label: 'Gladly' },
  { value: '1', label: 'Rather' },
  { value: '0', label: 'No wish' },
  { value: '-1', label: 'Rather elsewhere' },
  { value: '-2', label: 'Rather not' },
];

/** What she likes to teach: a wish, never a rule. */
export function Wishes({ instructorId, wishes }: { instructorId: number; wishes: Wish[] }) {
  const classesOffered = useQuery(catalogueQueries.classes()).data ?? [];
  const locations = useQuery(catalogueQueries.locations()).data ?? [];
  const [wanted, setWanted] = useState(wishes);
  const save = useSetWishes(instructorId);
  const weightOf = (kind: Wish['kind'], value: string) =>
    wanted.find((wish) => wish.kind === kind && wish.value === value)?.weight ?? 0;
  const set = (kind: Wish['kind'], value: string, weight: number) =>
    setWanted((before) => [
      ...before.filter((wish) => wish.kind !== kind || wish.value !== value),
      ...(weight === 0 ? [] : [{ kind, value, weight }]),
    ]);
  const groups: [string, Wish['kind'], { value: string; label: string }[]][] = [
    [
      'Part of the day',
      'partOfDay',
      [
        { value: 'morning', label: 'Morning, before 12:00' },
        { value: 'afternoon', label: 'Afternoon' },
        { value: 'evening', label: 'Evening, from 17:00' },
      ],
    ],
    ['Weekday', 'weekday', weekdays.map((label, at) => ({ value: String(at + 1), label }))],
    ['Class', 'class', classesOffered.map(({ code, name }) => ({ value: code, label: name }))],
    ['Location', 'location', locations.map(({ code, name }) => ({ value: code, label: name }))],
  ];
  return (
    <Stack gap="md">
      <Text c="dimmed">Wishes are weighed when classes are given out; they never bind.</Text>
      {groups.map(([title, kind, things]) => (
        <section key={kind} aria-label={title}>
          <Title order={4}>{title}</Title>
          <ul className={classes.rows}>
            {things.map(({ value, label }) => (
              <li key={value}>
                <span style={{ flex: '1 1 12rem' }}>{label}</span>
                <Select
                  aria-label={label}
                  data={weights}
                  value={String(weightOf(kind, value))}
                  onChange={(weight) => set(kind, value, Number(weight ?? 0))}
                  allowDeselect={false}
                  w="11rem"
                />
              </li>
            ))}
          </ul>
        </section>
      ))}
      <Refused error={save.error} />
      {save.isSuccess && <Text role="status">Kept.</Text>}
      <div>
        <Button loading={save.isPending} onClick={() => save.mutate(wanted)}>
          Save the wishes
        </Button>
      </div>
    </Stack>
  );
}
