import { Button, Group, Text } from '@mantine/core';
import { useFilePaperLetter } from '@/api/clients';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';

interface Props {
  clientId: number;
  onDone: () => void;
}

/** That a letter lies at the desk; what stands in it is read by somebody else. */
export function LetterForm({ clientId, onDone }: Props) {
  const file = useFilePaperLetter(clientId);
  return (
    <>
      <Refused error={file.error} />
      <Text>
        She handed a letter in on paper. It waits to be read, and counts once that is done. Put it
        where only those who read letters find it.
      </Text>
      <Group mt="lg">
        <Button
          loading={file.isPending}
          onClick={() =>
            file.mutate(undefined, {
              onSuccess: () => {
                tell('The letter is filed and waits to be read.');
                onDone();
              },
            })
          }
        >
          Paper, at the desk
        </Button>
        <Button variant="default" onClick={onDone}>
          Leave it
        </Button>
      </Group>
    </>
  );
}
