import { Button, Collapse, Text } from '@mantine/core';
import { useDisclosure } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { clientQueries } from '@/api/clients';
import { useWithdrawNote } from '@/api/notes';
import type { ClassNote } from '@/api/types';
import { Asked, Lines } from '@/components/states/asked';
import { tellRefused } from '@/components/states/told';
import { shortDay } from '@/components/time/days';
import { NoteList } from './note-list';

interface Props {
  clientId: number;
  says: string;
  /** The owner may take any note back. */
  may?: 'read' | 'withdraw';
}

/** Every note about one person, folded: there to be read, in nobody’s way. */
export function NotesAbout({ clientId, says, may = 'read' }: Props) {
  const [opened, { toggle }] = useDisclosure(false);
  const id = `notes-about-${clientId}`;
  return (
    <div>
      <Button
        variant="transparent"
        color="gray"
        px={0}
        aria-expanded={opened}
        aria-controls={id}
        onClick={toggle}
      >
        {says}
      </Button>
      <Collapse expanded={opened} id={id}>
        {opened && <Notes clientId={clientId} may={may} />}
      </Collapse>
    </div>
  );
}

function Notes({ clientId, may }: Required<Pick<Props, 'clientId' | 'may'>>) {
  const notes = useQuery(clientQueries.notes(clientId));
  return (
    <Asked query={notes} waiting={<Lines count={2} />}>
      {(list) =>
        list.length === 0 ? (
          <Text c="dimmed">Nothing has been noted.</Text>
        ) : (
          <NoteList
            notes={list}
            act={may === 'withdraw' ? (note) => <Withdraw note={note} /> : undefined}
          />
        )
      }
    </Asked>
  );
}

function Withdraw({ note }: { note: ClassNote }) {
  const withdraw = useWithdrawNote();
  return (
    <Button
      size="xs"
      variant="default"
      mt={4}
      loading={withdraw.isPending}
      onClick={() => void withdraw.mutateAsync(note).catch(tellRefused)}
      aria-label={`Withdraw the note of ${shortDay(note.on)}`}
    >
      Withdraw
    </Button>
  );
}
