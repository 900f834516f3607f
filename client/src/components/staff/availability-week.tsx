import { Alert, Button, Group, Select, Stack, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { Fragment, useState, type KeyboardEvent } from 'react';
import { type AvailableHours, useSetAvailability } from '@/api/staff';
import { catalogueQueries } from '@/api/catalogue';
import { Refused } from '@/components/states/asked';
import { clock, drawn, firstSlot, hoursOf, lastSlot, slotKey } from './availability';
import { HerSessions } from './her-sessions';
import classes from './staff.module.css';
import { weekdays } from './words';

interface Props {
  instructorId: number;
  hours: AvailableHours[];
}

const slots = Array.from({ length: lastSlot - firstSlot }, (_, at) => firstSlot + at);

/** The week as half hours: drawn with the mouse, or with the arrow keys and space. */
export function AvailabilityWeek({ instructorId, hours }: Props) {
  const kept = drawn(hours);
  const locations = useQuery(catalogueQueries.locations()).data ?? [];
  const [given, setGiven] = useState(() => new Map(kept ?? []));
  const [of, setOf] = useState('any');
  const [stroke, setStroke] = useState<boolean | null>(null);
  const [at, setAt] = useState({ weekday: 1, slot: 18 });
  const save = useSetAvailability(instructorId);
  const places = [
    { value: 'any', label: 'any location' },
    ...locations.map(({ id, name }) => ({ value: String(id), label: name })),
  ];
  const nameOf = (place: string) => places.find(({ value }) => value === place)?.label ?? '';
  const shortOf = (place?: string) =>
    place === undefined ? '' : place === 'any' ? '•' : nameOf(place).slice(0, 1);

  const paint = (weekday: number, slot: number, give: boolean) =>
    setGiven((before) => {
      const next = new Map(before);
      if (give) next.set(slotKey(weekday, slot), of);
      else next.delete(slotKey(weekday, slot));
      return next;
    });
  const isGiven = (weekday: number, slot: number) => given.get(slotKey(weekday, slot)) === of;

  const onKeyDown = (event: KeyboardEvent) => {
    const step = { ArrowUp: [0, -1], ArrowDown: [0, 1], ArrowLeft: [-1, 0], ArrowRight: [1, 0] }[
      event.key
    ];
    if (step === undefined) return;
    event.preventDefault();
    const weekday = Math.min(7, Math.max(1, at.weekday + (step[0] ?? 0)));
    const slot = Math.min(lastSlot - 1, Math.max(firstSlot, at.slot + (step[1] ?? 0)));
    // Held down with shift it draws on as it goes.
    if (event.shiftKey) paint(weekday, slot, isGiven(at.weekday, at.slot));
    setAt({ weekday, slot });
    event.currentTarget.parentElement
      ?.querySelector<HTMLElement>(`[data-at="${slotKey(weekday, slot)}"]`)
      ?.focus();
  };

  return (
    <Stack gap="md">
      {kept === null && (
        <Alert color="amber">
          <Text size="md">
            The hours kept now cannot be drawn as half hours:{' '}
            {hours
              .map(({ weekday, from, to }) => `${weekdays[weekday - 1]} ${from} to ${to}`)
              .join(', ')}
            . What is drawn here takes their place once it is saved.
          </Text>
        </Alert>
      )}
      <Text c="dimmed">
        Draw the half hours with the mouse, or go there with the arrow keys and press space; shift
        and an arrow draws on. Nothing drawn means at any hour.
      </Text>
      <Select
        label="Draw hours for"
        data={places}
        value={of}
        onChange={(place) => setOf(place ?? 'any')}
        allowDeselect={false}
        maw="16rem"
      />
      <div
        className={classes.grid}
        onPointerUp={() => setStroke(null)}
        onPointerLeave={() => setStroke(null)}
      >
        <span />
        {weekdays.map((day) => (
          <span key={day} className={classes.day}>
            {day.slice(0, 2)}
          </span>
        ))}
        {slots.map((slot) => (
          <Fragment key={slot}>
            <span className={classes.hour}>{slot % 2 === 0 ? clock(slot) : ''}</span>
            {weekdays.map((day, index) => {
              const weekday = index + 1;
              const place = given.get(slotKey(weekday, slot));
              return (
                <button
                  key={day}
                  type="button"
                  className={classes.slot}
                  data-at={slotKey(weekday, slot)}
                  tabIndex={at.weekday === weekday && at.slot === slot ? 0 : -1}
                  aria-pressed={place !== undefined}
                  aria-label={`${day} ${clock(slot)}${place === undefined ? '' : `, ${nameOf(place)}`}`}
                  onFocus={() => setAt({ weekday, slot })}
                  onKeyDown={onKeyDown}
                  onPointerDown={() => {
                    const give = !isGiven(weekday, slot);
                    setStroke(give);
                    paint(weekday, slot, give);
                  }}
                  onPointerEnter={() => stroke !== null && paint(weekday, slot, stroke)}
                  onClick={(event) => {
                    // A press of the mouse has drawn already; one of the keyboard has no place.
                    if (event.detail === 0) paint(weekday, slot, !isGiven(weekday, slot));
                  }}
                >
                  {shortOf(place)}
                </button>
              );
            })}
          </Fragment>
        ))}
      </div>
      <Refused error={save.error} />
      {save.isSuccess && (
        <div role="status">
          <Text>Kept.</Text>
          {save.data.outside.length > 0 && (
            <>
              <Text>These sessions lie outside of it, and stay as they are:</Text>
              <HerSessions sessions={save.data.outside} />
            </>
          )}
        </div>
      )}
      <Group>
        <Button loading={save.isPending} onClick={() => save.mutate(hoursOf(given))}>
          Save the hours
        </Button>
        <Button variant="default" onClick={() => setGiven(new Map())}>
          Clear the week
        </Button>
      </Group>
    </Stack>
  );
}
