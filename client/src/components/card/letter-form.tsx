import { Button, FileInput, Group, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { useFileLetter } from '@/api/letters';
import { Problem } from '@/api/problem';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';

interface Props {
  clientId: number;
  onDone: () => void;
}

/** That she handed a letter in, as a file or on paper; what stands in it is read by somebody else. */
export function LetterForm({ clientId, onDone }: Props) {
  const filing = useFileLetter(clientId);
  const [scan, setScan] = useState<File | null>(null);
  const fields = filing.error instanceof Problem ? filing.error.fields : {};
  const file = (what: File | null) =>
    void filing.mutateAsync(what).then(
      () => {
        tell('The letter is filed and waits to be read.');
        onDone();
      },
      () => undefined,
    );
  return (
    <Stack>
      {fields.file === undefined && <Refused error={filing.error} />}
      <Text>It waits to be read by somebody who reads letters, and counts once that is done.</Text>
      <FileInput
        label="A scan or a photo"
        description="PDF, JPEG or PNG, up to 10 MB. It cannot be opened again from the desk."
        placeholder="Choose a file"
        accept="application/pdf,image/jpeg,image/png"
        clearable
        clearButtonProps={{ 'aria-label': 'Choose no file' }}
        value={scan}
        onChange={setScan}
        error={fields.file}
      />
      <Text size="sm" c="dimmed">
        Or on paper: put it where only those who read letters find it.
      </Text>
      <Group>
        <Button
          disabled={scan === null}
          loading={filing.isPending && scan !== null}
          onClick={() => file(scan)}
        >
          File the scan
        </Button>
        <Button
          variant="default"
          disabled={scan !== null}
          loading={filing.isPending && scan === null}
          onClick={() => file(null)}
        >
          Paper, at the desk
        </Button>
        <Button variant="default" disabled={filing.isPending} onClick={onDone}>
          Leave it
        </Button>
      </Group>
    </Stack>
  );
}
