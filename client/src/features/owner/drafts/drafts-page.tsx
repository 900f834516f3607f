import { Button, Group, Text, Title } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { draftQueries } from '@/api/drafts';
import { useMe } from '@/api/session';
import type { DraftSummary } from '@/api/types';
import { Asked, Empty } from '@/components/states/asked';
import { Go } from '@/components/states/go';
import { dayAndMonth, fullDate } from '@/components/time/days';
import { momentWords } from '@/components/time/zone';
import { MakeDraft } from './make-draft';
import ownerClasses from '@/features/owner/owner.module.css';

/** Drafts of weeks: those that are open, and what was published. */
export function DraftsPage() {
  const { today } = useMe();
  const navigate = useNavigate();
  const drafts = useQuery(draftQueries.list());
  const [making, setMaking] = useState(false);
  return (
    <>
      <Group justify="space-between" align="flex-end" mb="md">
        <Title>Drafts</Title>
        <Button onClick={() => setMaking(true)}>New draft</Button>
      </Group>
      <Asked query={drafts}>
        {(list) =>
          list.length === 0 ? (
            <Empty title="No drafts">
              Plan some weeks without touching the timetable: make a draft, change it, see what
              stands against it and whom it concerns, then publish it at once.
            </Empty>
          ) : (
            <ul className={ownerClasses.list}>
              {list.map((draft) => (
                <li key={draft.id} className={ownerClasses.job}>
                  <Go
                    to="/studio/drafts/$draftId"
                    params={{ draftId: String(draft.id) }}
                    fw={700}
                    fz="lg"
                  >
                    {draft.name}
                  </Go>
                  <Text c="dimmed">
                    {dayAndMonth(draft.from)} to {fullDate(draft.to)} · {standing(draft)}
                  </Text>
                </li>
              ))}
            </ul>
          )
        }
      </Asked>
      {making && (
        <MakeDraft
          day={today}
          onClose={() => setMaking(false)}
          onMade={(id) =>
            void navigate({ to: '/studio/drafts/$draftId', params: { draftId: String(id) } })
          }
        />
      )}
    </>
  );
}

const standing = ({ status, origin, madeAt, endedAt }: DraftSummary) =>
  status === 'published'
    ? `published ${momentWords(endedAt ?? madeAt)}`
    : `${origin === 'assignment' ? 'assigned by the program' : 'open, made'} ${momentWords(madeAt)}`;
