import { Button, NumberInput, Stack, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { catalogueQueries } from '@/api/catalogue';
import { staffQueries, type TravelTime, useSetTravel } from '@/api/staff';
import type { Location } from '@/api/types';
import { Asked, Empty, Refused } from '@/components/states/asked';

export function TravelPage() {
  const times = useQuery(staffQueries.travel());
  const locations = useQuery(catalogueQueries.locations());
  return (
    <>
      <Title mb="md">Travel times</Title>
      <Text c="dimmed" mb="md" maw="40rem">
        Minutes from door to door. Nobody is given two classes with less time between them; a way
        left empty is not checked.
      </Text>
      <Asked query={locations}>
        {(places) => (
          <Asked query={times}>
            {(list) =>
              list.length === 0 ? (
                <Empty title="There is only one location" />
              ) : (
                <Ways places={places} times={list} />
              )
            }
          </Asked>
        )}
      </Asked>
    </>
  );
}

function Ways({ places, times }: { places: readonly Location[]; times: TravelTime[] }) {
  const [wanted, setWanted] = useState(times);
  const save = useSetTravel();
  const nameOf = (id: number) => places.find((place) => place.id === id)?.name ?? '';
  return (
    <Stack maw="28rem">
      {wanted.map(({ fromLocationId: from, toLocationId: to, minutes }, at) => (
        <NumberInput
          key={`${from} ${to}`}
          label={`From ${nameOf(from)} to ${nameOf(to)}`}
          suffix=" min"
          min={1}
          max={600}
          allowDecimal={false}
          value={minutes ?? ''}
          onChange={(given) =>
            setWanted((before) =>
              before.map((way, index) =>
                index === at ? { ...way, minutes: given === '' ? null : Number(given) } : way,
              ),
            )
          }
        />
      ))}
      <Refused error={save.error} />
      {save.isSuccess && (
        <div role="status">
          <Text>Kept.</Text>
          {save.data.tooClose.length > 0 && (
            <>
              <Text>These lie too close together now, and stay as they are:</Text>
              <ul>
                {save.data.tooClose.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            </>
          )}
        </div>
      )}
      <div>
        <Button loading={save.isPending} onClick={() => save.mutate(wanted)}>
          Save travel times
        </Button>
      </div>
    </Stack>
  );
}
