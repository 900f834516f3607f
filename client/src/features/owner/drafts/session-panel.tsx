import { Alert, Button, Drawer, Group, NumberInput, Select, Stack, Text } from '@mantine/core';
import { TimeInput } from '@mantine/dates';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { draftQueries } from '@/api/drafts';
import { wordsOf } from '@/api/problem';
import type { Draft, DraftSession, Instructor, Location, StudioClass } from '@/api/types';
import { DayInput } from '@/components/forms/day-input';
import { AgainstIt } from './hand';
import { clockName, isSameSpot, otherClocks, spotOf, type Spot } from './place';
import type { Named } from './words';

interface Props {
  draft: Draft;
  /** The row that is edited; null: a new one. */
  session: DraftSession | null;
  start: Spot;
  locations: readonly Location[];
  classes: readonly StudioClass[];
  instructors: readonly Instructor[];
  named: Named;
  onSave: (spot: Spot) => void;
  onClose: () => void;
}

const clock = /^([01]\d|2[0-3]):[0-5]\d$/;

/** Everything about one session, to the minute; what would stand against it is told while it is typed. */
export function SessionPanel(props: Props) {
  const { draft, session, start, locations, classes, instructors, named, onSave, onClose } = props;
  const [spot, setSpot] = useState(start);
  const set = (change: Partial<Spot>) => setSpot((now) => ({ ...now, ...change }));
  const complete = clock.test(spot.startsLocal) && spot.on !== '' && spot.classId > 0;
  const check = useQuery(
    draftQueries.check(
      draft.draft.id,
      draft.draft.version,
      complete && spot.isHeld ? { ...spot, id: session?.id ?? null } : null,
    ),
  );
  const location = locations.find(({ rooms }) => rooms.some(({ id }) => id === spot.roomId));
  const isNew = session === null;
  const isSame = !isNew && isSameSpot(spot, spotOf(session));

  return (
    <Drawer
      opened
      onClose={onClose}
      position="right"
      size="26rem"
      title={isNew ? 'Add a session' : named.className(spot)}
      closeButtonProps={{ 'aria-label': 'Close' }}
    >
      <form
        onSubmit={(event) => {
          event.preventDefault();
          onSave(spot);
        }}
      >
        <Stack gap="sm">
          {!spot.isHeld && (
            <Alert color="amber" variant="light">
              It is called off in this draft.
              <Group mt="xs">
                <Button size="xs" variant="default" onClick={() => set({ isHeld: true })}>
                  Hold it after all
                </Button>
              </Group>
            </Alert>
          )}
          {(isNew || session.sessionId == null) && (
            <Select
              label="Class"
              required
              data={classes.map(({ id, name }) => ({ value: String(id), label: name }))}
              value={spot.classId > 0 ? String(spot.classId) : null}
              allowDeselect={false}
              onChange={(value) => {
                const of = classes.find(({ id }) => String(id) === value);
                if (of) set({ classId: of.id, minutes: of.minutes });
              }}
            />
          )}
          <DayInput
            label="Day"
            required
            clearable={false}
            minDate={draft.draft.from}
            maxDate={draft.draft.to}
            value={spot.on}
            onChange={(day) => set({ on: day ?? '' })}
          />
          <Group grow align="flex-start">
            <TimeInput
              label="Starts"
              required
              description={
                otherClocks(locations, spot.on === '' ? draft.draft.from : spot.on).length > 0
                  ? clockName(location)
                  : undefined
              }
              value={spot.startsLocal}
              onChange={(event) => set({ startsLocal: event.currentTarget.value.slice(0, 5) })}
            />
            <NumberInput
              label="Minutes"
              required
              min={5}
              max={240}
              step={5}
              value={spot.minutes}
              onChange={(value) => set({ minutes: Number(value) || 5 })}
            />
          </Group>
          <Select
            label="Room"
            required
            allowDeselect={false}
            data={locations.map(({ name, rooms }) => ({
              group: name,
              items: rooms.map((room) => ({
                value: String(room.id),
                label: `${room.name}, ${room.seats} seats`,
              })),
            }))}
            value={String(spot.roomId)}
            onChange={(value) => value !== null && set({ roomId: Number(value) })}
          />
          <Select
            label="Instructor"
            placeholder="Nobody yet"
            clearable
            clearButtonProps={{ 'aria-label': 'Nobody yet' }}
            data={instructors.map(({ id, name }) => ({ value: String(id), label: name }))}
            value={spot.instructorId == null ? null : String(spot.instructorId)}
            onChange={(value) => set({ instructorId: value === null ? null : Number(value) })}
          />
          <NumberInput
            label="Seats"
            required
            min={1}
            max={200}
            description={
              session !== null && session.seatsTaken > 0
                ? `${session.seatsTaken} are taken`
                : undefined
            }
            value={spot.seats}
            onChange={(value) => set({ seats: Number(value) || 1 })}
          />
          {complete && spot.isHeld && (
            <div role="status" aria-live="polite">
              {check.isError ? (
                <Text c="var(--stop)">{wordsOf(check.error)}</Text>
              ) : check.isPending ? (
                <Text size="sm" c="dimmed">
                  Looking what stands against it…
                </Text>
              ) : (
                <AgainstIt conflicts={check.data} />
              )}
            </div>
          )}
          <Group>
            <Button type="submit" disabled={!complete || isSame}>
              {isNew ? 'Add it' : 'Change it'}
            </Button>
            {session !== null && spot.isHeld && session.isHeld && (
              <Button
                variant="default"
                onClick={() => onSave({ ...spotOf(session), isHeld: false })}
              >
                {session.sessionId == null ? 'Take it out' : 'Call it off'}
              </Button>
            )}
          </Group>
        </Stack>
      </form>
    </Drawer>
  );
}
