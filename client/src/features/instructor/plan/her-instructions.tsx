import { Text, Title } from '@mantine/core';
import type { Person } from '@/api/types';
import classes from '@/features/instructor/teach.module.css';

/** What she does differently in a class without a plan. */
export function HerInstructions({ person }: { person: Person }) {
  return (
    <section>
      <Title order={3}>What to do differently</Title>
      {person.instructions.length === 0 ? (
        <Text>Nothing: as taught.</Text>
      ) : (
        <ul className={classes.instructions}>
          {person.instructions.map(({ text, source }) => (
            <li key={text}>
              {text}
              {source !== null && (
                <Text component="span" display="block" size="xs" c="dimmed">
                  {source.cite}
                </Text>
              )}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
