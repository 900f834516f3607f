import { Button } from '@mantine/core';
import { IconChevronLeft, IconChevronRight } from '@tabler/icons-react';
import type { PlanProps } from './plan-panel';
import { howMany, howManyWords, stepTo } from './who-does-what';
import classes from './plan.module.css';

/** The movement being taught, with large buttons to go on; on a phone it stays at the foot of the screen. */
export function PlanNow({ plan, people, chosen, onChoose }: PlanProps) {
  const now = plan.find(({ position }) => position === chosen);
  const clear = (event: React.KeyboardEvent) => {
    if (event.key === 'Escape') onChoose(null);
  };
  const go = (step: 1 | -1) => () => onChoose(stepTo(plan, chosen, step));
  return (
    <section className={classes.now} aria-label="The movement now">
      <p role="status" className={classes.said}>
        {now === undefined ? (
          'No movement chosen'
        ) : (
          <>
            <strong>{now.name}:</strong> {howManyWords(howMany(people, now.position))}
          </>
        )}
      </p>
      {now !== undefined && (
        <p className={classes.cue}>
          {now.cue} <span className={classes.effort}>Effort {now.effort} of 10.</span>
        </p>
      )}
      <div className={classes.steps}>
        <Button
          size="lg"
          variant="default"
          px="xs"
          leftSection={<IconChevronLeft size={22} aria-hidden />}
          disabled={now === undefined}
          onClick={go(-1)}
          onKeyDown={clear}
        >
          Previous
        </Button>
        <Button
          size="lg"
          px="xs"
          rightSection={<IconChevronRight size={22} aria-hidden />}
          disabled={chosen !== null && chosen === plan.at(-1)?.position}
          onClick={go(1)}
          onKeyDown={clear}
        >
          Next
        </Button>
      </div>
    </section>
  );
}
