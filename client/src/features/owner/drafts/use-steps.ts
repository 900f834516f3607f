import { useState } from 'react';
import { useChangeDraft, useCopyWeek, type WantedSession } from '@/api/drafts';
import type { Draft, DraftSession } from '@/api/types';
import { spotOf, type Spot } from './place';

interface Step {
  words: string;
  before: WantedSession[];
  after: WantedSession[];
}

/** What the owner does to a draft, one step after the other, each of which can be taken back. */
export function useSteps(draft: Draft, tell: (words: string) => void) {
  const [past, setPast] = useState<Step[]>([]);
  const [future, setFuture] = useState<Step[]>([]);
  const [refused, setRefused] = useState<{ error: unknown; again: () => void } | null>(null);
  const change = useChangeDraft(draft.draft.id);
  const copy = useCopyWeek(draft.draft.id);

  const done = (step: Step) => {
    setPast((steps) => [...steps, step]);
    setFuture([]);
    tell(step.words);
  };
  /** Added rows are taken back by not holding them, so that they keep their id. */
  const added = (words: string, after: Draft) => {
    const known = new Set(draft.sessions.map(({ id }) => id));
    const rows = after.sessions.filter(({ id }) => !known.has(id)).map(spotOf);
    done({ words, before: rows.map((row) => ({ ...row, isHeld: false })), after: rows });
    return rows;
  };
  const ask = (rows: WantedSession[], then: (after: Draft) => void) => {
    setRefused(null);
    change.mutate(rows, {
      onSuccess: then,
      onError: (error) => setRefused({ error, again: () => ask(rows, then) }),
    });
  };

  const [last, next] = [past.at(-1), future.at(-1)];
  return {
    busy: change.isPending || copy.isPending,
    refused,
    forget: () => setRefused(null),
    put: (session: DraftSession, spot: Spot, words: string) =>
      ask([spot], () => done({ words, before: [spotOf(session)], after: [spot] })),
    add: (spot: Spot, words: string) =>
      ask([{ ...spot, id: null }], (after) => void added(words, after)),
    copyWeek: (from: string, to: string, words: (count: number) => string, then: () => void) => {
      setRefused(null);
      copy.mutate(
        { from, to },
        {
          onSuccess: (after) => {
            const known = new Set(draft.sessions.map(({ id }) => id));
            added(words(after.sessions.filter(({ id }) => !known.has(id)).length), after);
            then();
          },
        },
      );
    },
    copy,
    undo:
      last === undefined
        ? undefined
        : () =>
            ask(last.before, () => {
              setPast((steps) => steps.slice(0, -1));
              setFuture((steps) => [...steps, last]);
              tell(`Taken back: ${last.words}`);
            }),
    redo:
      next === undefined
        ? undefined
        : () =>
            ask(next.after, () => {
              setFuture((steps) => steps.slice(0, -1));
              setPast((steps) => [...steps, next]);
              tell(`Done again: ${next.words}`);
            }),
  };
}

export type Steps = ReturnType<typeof useSteps>;
