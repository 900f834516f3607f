import { Button, Group, Text, Title } from '@mantine/core';
import { useDebouncedValue, useHotkeys } from '@mantine/hooks';
import { IconArrowBackUp, IconArrowForwardUp } from '@tabler/icons-react';
import { useQuery } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { planQueries, useSuitPlan } from '@/api/plans';
import { useMe } from '@/api/session';
import type { ClassPlan, Movement, ProposedPlan, SessionPlan } from '@/api/types';
import { SafetyNote } from '@/components/states/safety-note';
import { tellRefused } from '@/components/states/told';
import { CheckedAgainst } from './checked-against';
import { isSame, wanted } from './draft';
import { effortOver } from './effort';
import { EffortCurve } from './effort-curve';
import { Leaving } from './leaving';
import { MovedOn } from './moved-on';
import { MovementSearch } from './movement-search';
import { PlanItems } from './plan-items';
import { PlanTime } from './plan-time';
import { RoomPreview } from './room-preview';
import { SaveRow } from './save-row';
import { SessionHead } from './session-head';
import { SuitOutcome } from './suit-outcome';
import { useDraft } from './use-draft';
import { Versions } from './versions';
import { useSessionsAhead } from './sessions-ahead';
import { wantedOf } from './who';
import classes from './plans.module.css';

interface Props {
  ofClass: ClassPlan;
  ofSession?: SessionPlan;
  movements: readonly Movement[];
}

const settled = 300;
const usualMinutes = 3;

/** A plan being made: what is taught on the left, and what it means for those booked beside it. */
export function PlanEditor({ ofClass, ofSession, movements }: Props) {
  const me = useMe();
  const key = `studio.plan-draft.${me.accountId}.${ofClass.classId}`;
  const doing = useDraft({ ofClass, ofSession }, key);
  const { draft, change } = doing;
  const [said, setSaid] = useState('');
  const [outcome, setOutcome] = useState<ProposedPlan | null>(null);
  const known = useMemo(() => new Map(movements.map((one) => [one.code, one])), [movements]);
  const sessions = useSessionsAhead(ofClass.classId);
  const against = ofSession?.sessionId ?? sessions.data?.[0]?.id;
  const length = ofSession?.minutes ?? ofClass.minutes;

  const [asked] = useDebouncedValue(draft.items, settled);
  const preview = useQuery({
    ...planQueries.preview(against ?? 0, wanted(asked)),
    enabled: against !== undefined && asked.length > 0,
  });
  const seen = asked.length > 0 && preview.data?.sessionId === against ? preview.data : undefined;
  const suit = useSuitPlan();

  const undo = () => {
    change({ do: 'undo' });
    setSaid('Undone.');
    setOutcome(null);
  };
  const redo = () => {
    change({ do: 'redo' });
    setSaid('Done again.');
  };
  useHotkeys([
    ['mod+Z', undo],
    ['mod+shift+Z', redo],
    ['mod+Y', redo],
  ]);

  // What was pressed goes with the outcome; the focus goes back to where it came from.
  const putAway = (act?: () => void) => () => {
    act?.();
    setOutcome(null);
    document.getElementById('suit')?.focus();
  };
  const suitEverybody = () => {
    if (against === undefined) return;
    suit.mutate(
      { sessionId: against, items: wanted(draft.items) },
      {
        onSuccess: (proposed) => {
          change({ do: 'replace', items: wantedOf(proposed.items) });
          setOutcome(proposed);
          setSaid('');
        },
        onError: tellRefused,
      },
    );
  };

  const curve = effortOver(
    draft.items.map(({ movement, minutes }) => ({
      minutes,
      effort: known.get(movement)?.effort ?? 0,
      name: known.get(movement)?.name ?? movement,
    })),
  );

  return (
    <article aria-labelledby="plan">
      <Title id="plan">{ofClass.className}</Title>
      <SessionHead ofClass={ofClass} ofSession={ofSession} doing={doing} />
      <MovedOn ofClass={ofClass} ofSession={ofSession} doing={doing} />
      <div className={classes.split}>
        <div className={classes.make}>
          <MovementSearch
            movements={movements}
            onAdd={({ code, name }) => {
              change({ do: 'add', movement: code, minutes: usualMinutes });
              setSaid(`${name} added at the end.`);
            }}
          />
          <Group gap="xs" className={classes.tools}>
            <Button
              variant="default"
              leftSection={<IconArrowBackUp size={18} aria-hidden />}
              disabled={draft.past.length === 0}
              onClick={undo}
            >
              Undo
            </Button>
            <Button
              variant="default"
              leftSection={<IconArrowForwardUp size={18} aria-hidden />}
              disabled={draft.future.length === 0}
              onClick={redo}
            >
              Redo
            </Button>
            <Text role="status" size="sm" c="dimmed">
              {said}
            </Text>
          </Group>
          <PlanItems
            items={draft.items}
            known={known}
            preview={seen}
            change={change}
            onSaid={setSaid}
          />
        </div>
        <aside className={classes.side} aria-label="Those booked">
          <CheckedAgainst
            sessions={sessions}
            ofSession={ofSession}
            against={against}
            classId={ofClass.classId}
          />
          {against !== undefined && (
            <>
              <Button
                id="suit"
                variant="light"
                fullWidth
                loading={suit.isPending}
                disabled={draft.items.length === 0}
                onClick={suitEverybody}
              >
                A plan that suits everybody
              </Button>
              {outcome !== null && (
                <SuitOutcome
                  outcome={outcome}
                  onUndo={isSame(outcome.items, draft.items) ? putAway(undo) : undefined}
                  onClose={putAway()}
                />
              )}
              <EffortCurve curve={curve} length={length} />
              <RoomPreview query={preview} seen={seen} isEmpty={draft.items.length === 0} />
            </>
          )}
          {against === undefined && <EffortCurve curve={curve} length={length} />}
          <Versions ofClass={ofClass} change={change} onSaid={setSaid} />
        </aside>
      </div>
      <SaveRow
        ofClass={ofClass}
        ofSession={ofSession}
        against={against}
        doing={doing}
        time={<PlanTime items={draft.items} length={length} />}
        onSaved={() => setOutcome(null)}
      />
      <Leaving doing={doing} storageKey={key} />
      <SafetyNote />
    </article>
  );
}
