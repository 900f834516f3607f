import { Skeleton, Stack } from '@mantine/core';

/** Stands in while a desk's own code arrives. */
export function Opening() {
  return (
    <Stack gap="md" pt="xl" aria-busy="true" aria-label="Opening">
      <Skeleton h={36} w="40%" />
      <Skeleton h={20} w="60%" />
      <Skeleton h={180} mt="md" />
    </Stack>
  );
}
