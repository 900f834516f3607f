import { useElementSize } from '@mantine/hooks';
import { useState } from 'react';
import type { Person } from '@/api/types';
import { differently } from '@/features/instructor/plan/who-does-what';
import { columnsFor, layOut, stepFrom } from './layout';
import { Mat } from './mat';
import classes from './floor.module.css';

interface FloorProps {
  people: readonly Person[];
  seats: number;
  selected: number | null;
  /** The movement chosen in the plan, by its place. */
  movement: number | null;
  onPress: (person: Person) => void;
  /** What pressing a mat does, for its label. */
  pressing: 'look' | 'check-in';
}

/**
 * The room as the instructor sees it from her place: the nearest row is at the bottom. One stop for
 * the Tab key; arrows walk between the mats.
 */
export function Floor({ people, seats, selected, movement, onPress, pressing }: FloorProps) {
  const { ref, width } = useElementSize();
  const [at, setAt] = useState(0);
  const columns = columnsFor(width, people.length);
  const here = Math.min(at, people.length - 1);

  const walk = (event: React.KeyboardEvent<HTMLDivElement>) => {
    const next = stepFrom(here, event.key, people.length, columns);
    if (next === here) return;
    event.preventDefault();
    setAt(next);
    event.currentTarget.querySelector<HTMLElement>(`[data-mat="${next}"]`)?.focus();
  };

  return (
    <div className={classes.room} ref={ref}>
      {width > 0 && (
        <div
          role="grid"
          tabIndex={-1}
          aria-label="The floor, from your place; the first row is nearest to you"
          className={classes.rows}
          onKeyDown={walk}
        >
          {layOut(people.length, seats, columns).map((row, index) => (
            <div
              key={index}
              role="row"
              className={classes.row}
              style={{ gridTemplateColumns: `repeat(${columns}, minmax(0, 1fr))` }}
            >
              {row.map((mat, column) => {
                const person = mat === null ? undefined : people[mat];
                return (
                  <div role="gridcell" key={column}>
                    {person === undefined ? (
                      <div className={classes.free}>free</div>
                    ) : (
                      <Mat
                        person={person}
                        index={mat ?? 0}
                        selected={selected === person.bookingId}
                        choosing={movement !== null}
                        instead={differently(person, movement)}
                        tabbable={mat === here}
                        pressing={pressing}
                        onPress={() => {
                          setAt(mat ?? 0);
                          onPress(person);
                        }}
                      />
                    )}
                  </div>
                );
              })}
            </div>
          ))}
        </div>
      )}
      <div className={classes.place} aria-hidden="true">
        you
      </div>
    </div>
  );
}
