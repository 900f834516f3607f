import { Modal, Stack } from '@mantine/core';
import type { Roster } from '@/api/types';
import { ClassTable } from '@/features/instructor/plan/class-table';
import { PersonAge, PersonFacts } from '@/features/instructor/person-details';
import { JumpList } from './jump-list';
import type { Stop } from './steps';

export type Dialog = { kind: 'person'; bookingId: number } | { kind: 'jump' } | { kind: 'table' };

interface Props {
  roster: Roster;
  at: Stop;
  dialog: Dialog | null;
  canCheckIn: boolean;
  onShow: (stop: Stop) => void;
  onOpen: (dialog: Dialog | null) => void;
}

/** What is looked up in the middle of a class: one person, another movement, everybody. */
export function RoomDialogs({ roster, at, dialog, canCheckIn, onShow, onOpen }: Props) {
  const { session, plan, people } = roster;
  const person =
    dialog?.kind === 'person'
      ? people.find(({ bookingId }) => bookingId === dialog.bookingId)
      : undefined;
  // Escape is the class's own key; a dialog that took it too would leave both at once.
  const common = { onClose: () => onOpen(null), closeOnEscape: false };
  const show = (stop: Stop) => {
    onShow(stop);
    onOpen(null);
  };
  const chosen = at === 'notes' ? null : at;
  return (
    <>
      <Modal opened={person !== undefined} {...common} title={person?.called} size="lg">
        {person !== undefined && (
          <Stack gap="md">
            <div>
              <PersonAge person={person} />
            </div>
            <PersonFacts person={person} session={session} canCheckIn={canCheckIn} />
          </Stack>
        )}
      </Modal>
      <Modal opened={dialog?.kind === 'jump'} {...common} title="All movements" size="lg">
        <JumpList plan={plan} people={people} at={at} onShow={show} />
      </Modal>
      <Modal opened={dialog?.kind === 'table'} {...common} title="Whole class" size="100%">
        <ClassTable
          plan={plan}
          people={people}
          chosen={chosen}
          onChoose={(position) => position !== null && show(position)}
          onLook={({ bookingId }) => onOpen({ kind: 'person', bookingId })}
        />
      </Modal>
    </>
  );
}
