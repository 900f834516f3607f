import { Button, Group, Modal, Text } from '@mantine/core';
import { useBlocker } from '@tanstack/react-router';
import type { DraftDoing } from './use-draft';

/** Asks before a changed draft is left; it waits in this tab, and is thrown away only when she says so. */
export function Leaving({ doing, storageKey }: { doing: DraftDoing; storageKey: string }) {
  const { isChanged } = doing;
  const blocker = useBlocker({
    shouldBlockFn: ({ current, next }) => isChanged && current.pathname !== next.pathname,
    enableBeforeUnload: () => isChanged,
    withResolver: true,
  });
  const stay = () => blocker.reset?.();
  return (
    <Modal opened={blocker.status === 'blocked'} onClose={stay} title="This plan is not saved">
      <Text>
        The draft waits in this tab until you come back to this class. Nobody else sees it, and what
        is taught does not change.
      </Text>
      <Group mt="md" gap="xs">
        <Button onClick={stay}>Stay here</Button>
        <Button variant="default" onClick={() => blocker.proceed?.()}>
          Leave and keep the draft
        </Button>
        <Button
          variant="subtle"
          color="brick"
          onClick={() => {
            // Before the draft writes itself down again: the page goes at once.
            doing.change({ do: 'rebase', base: doing.draft.base });
            sessionStorage.removeItem(storageKey);
            blocker.proceed?.();
          }}
        >
          Throw the draft away
        </Button>
      </Group>
    </Modal>
  );
}
