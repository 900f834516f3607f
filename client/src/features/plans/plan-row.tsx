import type { DraggableProvidedDragHandleProps } from '@hello-pangea/dnd';
import { ActionIcon, NumberInput, Text } from '@mantine/core';
import { IconArrowDown, IconArrowUp, IconGripVertical, IconX } from '@tabler/icons-react';
import { useState } from 'react';
import type { Movement, PlanPreview, PreviewedItem } from '@/api/types';
import { MovementMark, Needs } from '@/components/verdict/mark';
import type { DraftItem } from './draft';
import { together } from './who';
import classes from './plans.module.css';

interface Props {
  item: DraftItem;
  at: number;
  of: number;
  movement?: Movement;
  said?: PreviewedItem;
  nobody: PlanPreview['nobody'];
  handle: DraggableProvidedDragHandleProps | null;
  onMinutes: (minutes: number) => void;
  onMove: (to: number) => void;
  onRemove: () => void;
}

const mostMinutes = 240;

/** One movement of the plan, and what those booked do instead. */
export function PlanRow(props: Props) {
  const { item, at, of, movement, said, nobody, handle, onMinutes, onMove, onRemove } = props;
  const name = movement?.name ?? item.movement;
  return (
    <>
      <div {...handle} className={classes.grip} aria-label={`Move ${name}, number ${at + 1}`}>
        <IconGripVertical size={20} aria-hidden />
      </div>
      <div className={classes.what}>
        <Text component="h2" fw={600} size="md" className={classes.name}>
          {at + 1}. {name}
        </Text>
        {movement === undefined ? (
          <Needs tone="stop">no longer in the catalogue: choose another</Needs>
        ) : (
          <Text size="sm" c="dimmed">
            {movement.positionName}, effort {movement.effort} of 10. {movement.cue}
          </Text>
        )}
        {nobody.map(({ stage }) => (
          <Needs key={stage} tone="mind">
            nobody does this in the stage {stage}
          </Needs>
        ))}
        {said !== undefined && <Who said={said} />}
      </div>
      <Minutes minutes={item.minutes} name={name} onMinutes={onMinutes} />
      <div className={classes.moves}>
        <ActionIcon
          variant="subtle"
          size="lg"
          aria-label={`Move ${name} up`}
          disabled={at === 0}
          onClick={() => onMove(at - 1)}
        >
          <IconArrowUp size={18} aria-hidden />
        </ActionIcon>
        <ActionIcon
          variant="subtle"
          size="lg"
          aria-label={`Move ${name} down`}
          disabled={at === of - 1}
          onClick={() => onMove(at + 1)}
        >
          <IconArrowDown size={18} aria-hidden />
        </ActionIcon>
        <ActionIcon
          id={`remove-${item.key}`}
          variant="subtle"
          size="lg"
          aria-label={`Remove ${name}`}
          onClick={onRemove}
        >
          <IconX size={18} aria-hidden />
        </ActionIcon>
      </div>
    </>
  );
}

function Who({ said }: { said: PreviewedItem }) {
  if (said.people.length === 0) return null;
  const all = said.people.length + said.asTaught;
  return (
    <ul className={classes.who} aria-label="Who does something else">
      {together(said).map(({ verdict, instruction, names }) => (
        <li key={`${verdict} ${instruction}`}>
          <MovementMark verdict={verdict} /> {names.length} of {all}: <strong>{instruction}</strong>
          <span className={classes.names}>
            {names.length === all && all > 1 ? 'Everybody' : names.join(', ')}
          </span>
        </li>
      ))}
    </ul>
  );
}

interface MinutesProps {
  minutes: number;
  name: string;
  onMinutes: (minutes: number) => void;
}

/** May stand empty while it is typed in; the plan then keeps the last number. */
function Minutes({ minutes, name, onMinutes }: MinutesProps) {
  const [typed, setTyped] = useState<{ of: number; value: number | string }>({
    of: minutes,
    value: minutes,
  });
  if (typed.of !== minutes) setTyped({ of: minutes, value: minutes });
  return (
    <NumberInput
      className={classes.minutes}
      aria-label={`Minutes of ${name}`}
      value={typed.value}
      min={1}
      max={mostMinutes}
      clampBehavior="strict"
      allowDecimal={false}
      allowNegative={false}
      suffix=" min"
      onChange={(value) => {
        const isMinutes = typeof value === 'number' && value >= 1;
        setTyped({ of: isMinutes ? value : minutes, value });
        if (isMinutes) onMinutes(value);
      }}
      onBlur={() => setTyped({ of: minutes, value: minutes })}
    />
  );
}
