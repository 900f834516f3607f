import { Button } from '@mantine/core';
import { useNoteCall } from '@/api/clients';
import { tell, tellRefused } from '@/components/states/told';

/** Closes the item: a person has rung her. */
export function RangHer({ clientId, called }: { clientId: number; called: string }) {
  const note = useNoteCall(clientId);
  return (
    <Button
      size="xs"
      variant="default"
      loading={note.isPending}
      aria-label={`She was rung: ${called}`}
      onClick={() => void note.mutateAsync().then(() => tell('Noted.'), tellRefused)}
    >
      She was rung
    </Button>
  );
}
