import { DragDropContext, Draggable, Droppable, type ResponderProvided } from '@hello-pangea/dnd';
import { Text } from '@mantine/core';
import type { Dispatch } from 'react';
import type { Movement, PlanPreview } from '@/api/types';
import { Empty } from '@/components/states/asked';
import type { Change, DraftItem } from './draft';
import { PlanRow } from './plan-row';
import { saidOf } from './who';
import classes from './plans.module.css';

interface Props {
  items: readonly DraftItem[];
  known: ReadonlyMap<string, Movement>;
  preview?: PlanPreview;
  change: Dispatch<Change>;
  onSaid: (words: string) => void;
}

const howToMove =
  'Press Space to lift this movement, the arrow keys to move it, Space again to put it down, and Escape to leave it where it was.';

/** The movements in order: dragged, moved by keys or by the buttons of each. */
export function PlanItems({ items, known, preview, change, onSaid }: Props) {
  const nameOf = (code: string) => known.get(code)?.name ?? code;
  const nameAt = (at: number) => nameOf(items[at]?.movement ?? '');
  const place = (at: number) => `number ${at + 1} of ${items.length}`;

  const move = (from: number, to: number) => {
    change({ do: 'move', from, to });
    onSaid(`${nameAt(from)} is ${place(to)} now.`);
  };
  const remove = (at: number) => {
    const item = items[at];
    if (item === undefined) return;
    // What comes after it takes its place and the focus with it.
    const next = items[at + 1] ?? items[at - 1];
    change({ do: 'remove', key: item.key });
    onSaid(`${nameOf(item.movement)} removed. Undo brings it back.`);
    requestAnimationFrame(() => document.getElementById(`remove-${next?.key ?? ''}`)?.focus());
  };

  if (items.length === 0)
    return (
      <Empty title="Nothing is planned yet">
        Add the first movement above. Each can be moved, timed and removed.
      </Empty>
    );
  return (
    <DragDropContext
      dragHandleUsageInstructions={howToMove}
      onDragStart={({ source }, { announce }: ResponderProvided) =>
        announce(`${nameAt(source.index)} lifted, ${place(source.index)}.`)
      }
      onDragUpdate={({ source, destination }, { announce }) =>
        announce(
          destination
            ? `${nameAt(source.index)} would be ${place(destination.index)}.`
            : 'Outside the plan.',
        )
      }
      onDragEnd={({ source, destination }, { announce }) => {
        if (destination === null || destination.index === source.index) {
          announce(`${nameAt(source.index)} stays ${place(source.index)}.`);
          return;
        }
        announce(`${nameAt(source.index)} put down, ${place(destination.index)}.`);
        move(source.index, destination.index);
      }}
    >
      <Droppable droppableId="plan">
        {(list) => (
          <ol
            ref={list.innerRef}
            {...list.droppableProps}
            className={classes.items}
            aria-label="Movements in order"
          >
            {items.map((item, at) => (
              <Draggable key={item.key} draggableId={item.key} index={at}>
                {(held, { isDragging }) => (
                  <li
                    ref={held.innerRef}
                    {...held.draggableProps}
                    className={classes.item}
                    data-held={isDragging || undefined}
                  >
                    <PlanRow
                      item={item}
                      at={at}
                      of={items.length}
                      movement={known.get(item.movement)}
                      said={saidOf(preview, at, item.movement)}
                      nobody={preview?.nobody.filter(({ position }) => position === at + 1) ?? []}
                      handle={held.dragHandleProps}
                      onMinutes={(minutes) => change({ do: 'minutes', key: item.key, minutes })}
                      onMove={(to) => move(at, to)}
                      onRemove={() => remove(at)}
                    />
                  </li>
                )}
              </Draggable>
            ))}
            {list.placeholder}
          </ol>
        )}
      </Droppable>
      <Text className={classes.hint} size="sm" c="dimmed">
        Drag a movement by its grip, or focus the grip and press Space and the arrow keys.
      </Text>
    </DragDropContext>
  );
}
