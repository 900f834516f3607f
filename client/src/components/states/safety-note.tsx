import { Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { catalogueQueries } from '@/api/catalogue';

/** Said wherever the program speaks about her health. */
export function SafetyNote({ locationId }: { locationId?: number }) {
  const { data } = useQuery(catalogueQueries.locations());
  const place = data?.find(({ id }) => id === locationId) ?? data?.[0];
  return (
    <Text component="p" size="sm" c="dimmed" mt="xl" maw="46rem">
      This supports judgement; it does not diagnose. Local codes and her own clinician come first.
      In an emergency call {place?.emergencyNumber ?? 'the local emergency number'}.
    </Text>
  );
}
