import { Anchor, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { catalogueQueries } from '@/api/catalogue';
import { telephone } from './telephone';

/** Said wherever the program judges about her health. */
export function SafetyNote({ locationId }: { locationId?: number }) {
  const { data } = useQuery(catalogueQueries.locations());
  const place = data?.find(({ id }) => id === locationId) ?? data?.[0];
  return <CautionWords number={place?.emergencyNumber} />;
}

interface Props {
  number?: string;
  /** In a line of the class room, where every pixel counts. */
  compact?: boolean;
  /** Black on white, in the type of the sheet. */
  onPaper?: boolean;
}

/** The same where the number is at hand already. */
export function CautionWords({ number, compact = false, onPaper = false }: Props) {
  const words = (
    <>
      This supports judgement; it does not diagnose. Local codes and her own clinician come first.
      In an emergency call{' '}
      {number === undefined ? (
        'the local emergency number'
      ) : onPaper ? (
        number
      ) : (
        <Anchor inherit c="inherit" underline="always" href={telephone(number)}>
          {number}
        </Anchor>
      )}
      .
    </>
  );
  if (onPaper) return <p>{words}</p>;
  return compact ? (
    <span> {words}</span>
  ) : (
    <Text component="p" size="sm" c="dimmed" mt="xl" maw="46rem">
      {words}
    </Text>
  );
}
