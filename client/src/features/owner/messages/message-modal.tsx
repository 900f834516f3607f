import { Anchor, Modal, Stack, Tabs, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { messageQueries } from '@/api/messages';
import type { MessageInFull } from '@/api/types';
import { Preview } from '@/components/messages/preview';
import { Asked, Lines } from '@/components/states/asked';
import classes from './messages.module.css';

/** One message as it was, or will be, received. */
export function MessageModal({ messageId, onClose }: { messageId?: number; onClose: () => void }) {
  return (
    <Modal opened={messageId !== undefined} onClose={onClose} title="Message" size="xl">
      {messageId !== undefined && <One messageId={messageId} />}
    </Modal>
  );
}

function One({ messageId }: { messageId: number }) {
  const one = useQuery(messageQueries.one(messageId));
  return (
    <Asked query={one} waiting={<Lines count={6} />}>
      {(full) => (
        <Stack gap="sm">
          <Text>
            To {full.message.to}
            {full.message.address !== '' && ` <${full.message.address}>`}. {full.message.says}.
          </Text>
          <Read said={full} />
          {full.hasFile && (
            <Anchor href={`/api/messages/${messageId}/file`} download>
              The file as it was written
            </Anchor>
          )}
        </Stack>
      )}
    </Asked>
  );
}

/** As it looks, and as plain text. */
export const Read = ({ said }: { said: Pick<MessageInFull, 'subject' | 'text' | 'html'> }) => (
  <>
    <Text fw={600} size="lg">
      {said.subject}
    </Text>
    <Tabs defaultValue="html" keepMounted={false}>
      <Tabs.List mb="sm">
        <Tabs.Tab value="html">As it looks</Tabs.Tab>
        <Tabs.Tab value="text">As plain text</Tabs.Tab>
      </Tabs.List>
      <Tabs.Panel value="html">
        <Preview html={said.html} title={said.subject} />
      </Tabs.Panel>
      <Tabs.Panel value="text">
        <pre className={classes.plain}>{said.text}</pre>
      </Tabs.Panel>
    </Tabs>
  </>
);
