import { Checkbox, Stack } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { catalogueQueries } from '@/api/catalogue';
import type { WarningSign } from '@/api/types';

interface Props {
  label: string;
  value: string[];
  onChange: (signs: string[]) => void;
  /** Leaves out what cannot be so for her. */
  only?: (sign: WarningSign) => boolean;
  /** In a sentence each, for herself; otherwise in a few words. */
  inFull?: boolean;
}

/** The warning signs of the catalogue, to tick. None has to be. */
export function SignChoice({ label, value, onChange, only = () => true, inFull = false }: Props) {
  const { data: known = [] } = useQuery(catalogueQueries.warningSigns());
  return (
    <Checkbox.Group label={label} value={value} onChange={onChange}>
      <Stack gap={inFull ? 'sm' : 6} mt={6}>
        {known.filter(only).map(({ code, name, asks }) => (
          <Checkbox key={code} value={code} label={inFull ? asks : name} />
        ))}
      </Stack>
    </Checkbox.Group>
  );
}
