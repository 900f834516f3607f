import { Switch, Text, UnstyledButton } from '@mantine/core';
import { useId, useState } from 'react';
import type { Person } from '@/api/types';
import { MovementShape } from '@/components/verdict/movement-shape';
import { movementWords } from '@/components/verdict/words';
import { ageOf } from '@/features/instructor/floor/mat';
import type { PlanProps } from './plan-panel';
import { onlyDifferent } from './table-rows';
import { differently } from './who-does-what';
import classes from './class-table.module.css';

interface Props extends PlanProps {
  onLook: (person: Person) => void;
}

/** Movements down, people across. It scrolls within its own box; names and movements stay in sight. */
export function ClassTable({ plan, people, chosen, onChoose, onLook }: Props) {
  const [different, setDifferent] = useState(false);
  const caption = useId();
  const shown = different ? onlyDifferent(plan, people) : { plan, people };
  return (
    <>
      <Switch
        size="md"
        mb="sm"
        label="Only what differs"
        checked={different}
        onChange={(event) => setDifferent(event.currentTarget.checked)}
      />
      {shown.plan.length === 0 ? (
        <Text>Everybody does everything as taught.</Text>
      ) : (
        <div className={classes.box} role="region" aria-labelledby={caption} tabIndex={0}>
          <table className={classes.table}>
            <caption id={caption} className={classes.caption}>
              Who does what, movement by movement
            </caption>
            <thead>
              <tr>
                <th scope="col">Movement</th>
                {shown.people.map((person) => (
                  <th key={person.bookingId} scope="col">
                    <UnstyledButton className={classes.press} onClick={() => onLook(person)}>
                      <span lang="">{person.called}</span>
                      <span className={classes.age}>{ageOf(person)}</span>
                    </UnstyledButton>
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {shown.plan.map(({ position, name, minutes }) => (
                <tr key={position} data-now={position === chosen || undefined}>
                  <th scope="row">
                    <UnstyledButton
                      className={classes.press}
                      aria-current={position === chosen ? 'step' : undefined}
                      onClick={() => onChoose(position === chosen ? null : position)}
                    >
                      <span>
                        {position}. {name}
                      </span>
                      <span className={classes.age}>
                        {minutes} min{position === chosen && ' · now'}
                      </span>
                    </UnstyledButton>
                  </th>
                  {shown.people.map((person) => (
                    <Cell key={person.bookingId} person={person} position={position} />
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}

function Cell({ person, position }: { person: Person; position: number }) {
  const her = differently(person, position);
  if (her === undefined)
    return (
      <td data-verdict="asTaught">
        <MovementShape verdict="asTaught" /> <span>As taught</span>
      </td>
    );
  return (
    <td data-verdict={her.verdict}>
      <span className={classes.verdict}>
        <MovementShape verdict={her.verdict} /> {movementWords[her.verdict]}
      </span>
      <span className={classes.instruction}>{her.instruction}</span>
    </td>
  );
}
