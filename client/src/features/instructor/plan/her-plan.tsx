import { Text, Title } from '@mantine/core';
import type { HerMovement, Person } from '@/api/types';
import { MovementMark } from '@/components/verdict/mark';
import { allDifferently, sameThroughout, throughTheClass } from './who-does-what';
import classes from '@/features/instructor/teach.module.css';

/** All she does differently through the plan, and why. */
export function HerPlan({ person }: { person: Person }) {
  const all = allDifferently(person);
  const throughout = sameThroughout(person);
  const always = throughTheClass(person);
  return (
    <section>
      <Title order={3}>What to do differently</Title>
      {always.map(({ text }) => (
        <Text key={text} fw={600}>
          {text}
        </Text>
      ))}
      {all.length === 0 ? (
        <Text>{always.length === 0 ? 'Nothing: as taught.' : 'Every movement as taught.'}</Text>
      ) : throughout !== undefined ? (
        <>
          The whole class: <strong>{throughout.instruction}</strong>{' '}
          <MovementMark verdict={throughout.verdict} />
          <Why her={throughout} />
        </>
      ) : (
        <ul className={classes.instructions}>
          {all.map((her) => (
            <li key={her.position}>
              {her.name}: <strong>{her.instruction}</strong> <MovementMark verdict={her.verdict} />
              <Why her={her} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** A reason that only repeats the instruction is told by its source alone. */
const Why = ({ her: { instruction, reasons } }: { her: HerMovement }) =>
  reasons.map(({ text, source }, index) => (
    <div key={index}>
      {text !== instruction && <Text size="sm">{text}</Text>}
      {source !== null && (
        <Text size="xs" c="dimmed">
          {source.cite}
          {source.fromMemory && <strong> (from memory: check it before relying on it)</strong>}
        </Text>
      )}
    </div>
  ));
