import { useQuery } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { draftQueries } from '@/api/drafts';
import type { Draft, DraftSession } from '@/api/types';
import { isSameSpot, spotOf, type Spot } from './place';

/** How a session is held: with the pointer it follows, with the keys it is moved step by step. */
export type Hold = 'pointer' | 'keys';

export interface Held {
  session: DraftSession;
  at: Spot;
  by: Hold;
}

/** A session that is being moved, and what would stand against it there: the server says it, nobody else. */
export function useHeld(draft: Draft, put: (session: DraftSession, spot: Spot) => void) {
  const [held, show] = useState<Held | null>(null);
  // A pointer is faster than the page is drawn: what is put down is what was held last, not what was drawn last.
  const last = useRef<Held | null>(null);
  const hold = (next: Held | null) => {
    last.current = next;
    show(next);
  };
  const asked = useQuery(
    draftQueries.check(draft.draft.id, draft.draft.version, held === null ? null : held.at),
  );
  return {
    held,
    conflicts: asked.data,
    asking: held !== null && asked.isPending,
    refused: asked.error,
    take: (session: DraftSession, by: Hold, at: Spot = spotOf(session)) =>
      hold({ session, at, by }),
    move: (at: Spot) => {
      if (last.current !== null && !isSameSpot(last.current.at, at)) hold({ ...last.current, at });
    },
    takeBack: () => hold(null),
    putDown: () => {
      const now = last.current;
      if (now !== null && !isSameSpot(now.at, spotOf(now.session))) put(now.session, now.at);
      hold(null);
    },
  };
}

export type Holding = ReturnType<typeof useHeld>;
