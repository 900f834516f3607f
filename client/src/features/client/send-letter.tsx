import { Alert, Button, FileButton, Group, Progress, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { useSendLetter } from '@/api/send-letter';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { mostBytes, plainPhoto } from './letter-photo';

const kinds = 'application/pdf,image/jpeg,image/png,.pdf,.jpg,.jpeg,.png';

/** Chosen and sent in one go; whatever is wrong with the file is said right here. */
export function SendLetter({ clientId }: { clientId: number }) {
  const send = useSendLetter(clientId);
  const [sent, setSent] = useState(0);
  const [tooLarge, setTooLarge] = useState(false);
  const [readying, setReadying] = useState(false);

  const pick = async (file: File | null) => {
    if (file === null) return;
    send.reset();
    setSent(0);
    setReadying(true);
    const plain = await plainPhoto(file).finally(() => setReadying(false));
    setTooLarge(plain.size > mostBytes);
    if (plain.size > mostBytes) return;
    send.mutate(
      { file: plain, onSent: setSent },
      { onSuccess: () => tell('Your letter is with us and waits to be read.') },
    );
  };

  const busy = send.isPending || readying;
  return (
    <Stack gap="sm">
      <Title order={2}>Send a letter</Title>
      <Text>
        A photograph of every line is enough: PDF, JPEG or PNG, up to 10 MB. Only you, the owner and
        whoever reads letters here can open it.
      </Text>
      <Group gap="sm">
        <FileButton accept="image/jpeg,image/png" capture="environment" onChange={pick}>
          {(props) => (
            <Button {...props} disabled={busy}>
              Photograph it
            </Button>
          )}
        </FileButton>
        <FileButton accept={kinds} onChange={pick}>
          {(props) => (
            <Button {...props} variant="default" disabled={busy}>
              Choose a file
            </Button>
          )}
        </FileButton>
      </Group>
      {send.isPending && (
        <div>
          <Text role="status">Sending, {Math.round(sent * 100)} %</Text>
          <Progress value={sent * 100} size="lg" aria-label="How much is sent" />
        </div>
      )}
      {tooLarge && (
        <Alert color="brick" variant="light" role="alert">
          <Text>
            The file is larger than 10 MB, so it was not sent. A photograph of the letter is enough,
            or a scan with fewer dots.
          </Text>
        </Alert>
      )}
      {!tooLarge && <Refused error={send.error} />}
    </Stack>
  );
}
