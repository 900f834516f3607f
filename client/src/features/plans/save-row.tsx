import { Button, Group, Text } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import { useSaveClassPlan, useSaveSessionPlan, planQueries } from '@/api/plans';
import { useQueryClient } from '@tanstack/react-query';
import type { ClassPlan, SessionPlan } from '@/api/types';
import { Refused } from '@/components/states/asked';
import { tell } from '@/components/states/told';
import { wanted } from './draft';
import { baseOf, type DraftDoing } from './use-draft';
import classes from './plans.module.css';

interface Props {
  ofClass: ClassPlan;
  ofSession?: SessionPlan;
  against?: number;
  doing: DraftDoing;
  time: ReactNode;
  onSaved: () => void;
}

/** Keeps the draft: for the class from now on, or for one session only. */
export function SaveRow({ ofClass, ofSession, against, doing, time, onSaved }: Props) {
  const { draft, change, isChanged, moved } = doing;
  const saveClass = useSaveClassPlan(ofClass.classId);
  const saveSession = useSaveSessionPlan();
  const queries = useQueryClient();
  const [refused, setRefused] = useState<unknown>(null);
  const items = wanted(draft.items);
  const done = (base: Parameters<typeof baseOf>[0], words: string) => {
    setRefused(null);
    change({ do: 'rebase', base: baseOf(base) });
    onSaved();
    tell(words);
  };

  const forClass = () =>
    saveClass.mutateAsync({ basedOn: draft.base.classVersion, items }).then(
      (kept) =>
        done(
          {
            ofClass: kept,
            ofSession: ofSession && { ...ofSession, ...following(ofSession, kept) },
          },
          `${kept.className}: version ${kept.version} is kept.`,
        ),
      setRefused,
    );

  const forSession = async (sessionId: number) => {
    try {
      // Seen beside this draft where it was chosen; otherwise as it stands.
      const basedOn =
        draft.base.sessionVersions[sessionId] ??
        (await queries.query(planQueries.ofSession(sessionId))).version;
      const own = await saveSession.mutateAsync({ sessionId, plan: { basedOn, items } });
      done({ ofClass, ofSession: ofSession && own }, 'Kept for this session only.');
    } catch (no) {
      setRefused(no);
    }
  };

  const busy = saveClass.isPending || saveSession.isPending;
  const canSave = isChanged && moved === null && items.length > 0 && !busy;
  return (
    <div className={classes.save}>
      <Refused error={refused} />
      <Group justify="space-between" gap="xs">
        {time}
        <div className={classes.buttons}>
          {against !== undefined && ofSession?.mayChange !== false && (
            <Button
              variant={ofSession === undefined ? 'default' : 'filled'}
              disabled={!canSave}
              loading={saveSession.isPending}
              onClick={() => void forSession(against)}
            >
              Save for this session only
            </Button>
          )}
          {ofClass.mayChange && (
            <Button
              variant={ofSession === undefined ? 'filled' : 'default'}
              disabled={!canSave}
              loading={saveClass.isPending}
              onClick={() => void forClass()}
            >
              Save for the class
            </Button>
          )}
        </div>
      </Group>
      {!ofClass.mayChange && (
        <Text size="sm" c="dimmed">
          {ofClass.whyNot}
        </Text>
      )}
    </div>
  );
}

/** A session that follows its class has the class's new plan at once. */
const following = (session: SessionPlan, kept: ClassPlan): Partial<SessionPlan> =>
  session.followsClass ? { items: kept.items } : {};
