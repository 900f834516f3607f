import { Group, NumberInput, Select, TextInput } from '@mantine/core';
import type { Instructor, Location } from '@/api/types';

/** What a series and a single session have in common. */
export interface PlaceDraft {
  startsLocal: string;
  minutes: number;
  roomId: number | null;
  instructorId: number | null;
  seats: number;
}

interface Props {
  place: PlaceDraft;
  onChange: (place: PlaceDraft) => void;
  locations: readonly Location[];
  staff: readonly Instructor[];
  errors?: Record<string, string>;
}

const nobody = 'nobody';

export function PlaceFields({ place, onChange, locations, staff, errors = {} }: Props) {
  const set = (part: Partial<PlaceDraft>) => onChange({ ...place, ...part });
  return (
    <>
      <Group align="flex-start" grow preventGrowOverflow={false}>
        <TextInput
          type="time"
          label="Starts"
          value={place.startsLocal}
          error={errors.startsLocal}
          onChange={(event) => set({ startsLocal: event.currentTarget.value.slice(0, 5) })}
        />
        <NumberInput
          label="Minutes"
          min={5}
          max={240}
          allowDecimal={false}
          value={place.minutes}
          error={errors.minutes}
          onChange={(minutes) => set({ minutes: Number(minutes) })}
        />
        <NumberInput
          label="Seats"
          min={1}
          max={200}
          allowDecimal={false}
          value={place.seats === 0 ? '' : place.seats}
          error={errors.seats}
          onChange={(seats) => set({ seats: Number(seats) })}
        />
      </Group>
      <Select
        label="Room"
        data={locations.map(({ name, rooms }) => ({
          group: name,
          items: rooms.map((room) => ({
            value: String(room.id),
            label: `${room.name}, ${room.seats} seats`,
          })),
        }))}
        value={place.roomId === null ? null : String(place.roomId)}
        error={errors.roomId}
        allowDeselect={false}
        onChange={(room) => {
          const next = locations
            .flatMap(({ rooms }) => rooms)
            .find(({ id }) => String(id) === room);
          if (next)
            set({ roomId: next.id, seats: Math.min(place.seats || next.seats, next.seats) });
        }}
      />
      <Select
        label="Instructor"
        data={[
          { value: nobody, label: 'Nobody yet' },
          ...staff.map(({ id, name }) => ({ value: String(id), label: name })),
        ]}
        value={place.instructorId === null ? nobody : String(place.instructorId)}
        error={errors.instructorId}
        allowDeselect={false}
        searchable
        onChange={(who) =>
          set({ instructorId: who === null || who === nobody ? null : Number(who) })
        }
      />
    </>
  );
}
