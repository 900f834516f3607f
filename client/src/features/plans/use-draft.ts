import { useEffect, useReducer } from 'react';
import type { ClassPlan, SessionPlan } from '@/api/types';
import {
  changed,
  isChanged,
  isSame,
  read,
  startFrom,
  written,
  type Base,
  type Draft,
} from './draft';
import { wantedOf } from './who';

export interface Kept {
  ofClass: ClassPlan;
  /** The plan of the session looked at, when one is. */
  ofSession?: SessionPlan;
}

export const baseOf = ({ ofClass, ofSession }: Kept): Base => ({
  items: wantedOf((ofSession ?? ofClass).items),
  classVersion: ofClass.version,
  sessionVersions: ofSession === undefined ? {} : { [ofSession.sessionId]: ofSession.version },
});

const isCurrent = (base: Base, now: Base) =>
  base.classVersion === now.classVersion &&
  isSame(base.items, now.items) &&
  sessionsOf(now).every(([id, version]) => base.sessionVersions[Number(id)] === version);

const sessionsOf = ({ sessionVersions }: Base) => Object.entries(sessionVersions);

/** What somebody else saved since the draft was begun; nothing while it is not changed. */
function movedOn(draft: Draft, { ofClass, ofSession }: Kept): 'class' | 'session' | null {
  if (!isChanged(draft)) return null;
  if (draft.base.classVersion !== ofClass.version) return 'class';
  if (ofSession === undefined) return null;
  const seen = draft.base.sessionVersions[ofSession.sessionId];
  return seen !== undefined && seen !== ofSession.version ? 'session' : null;
}

/** A draft of a class's plan. It outlives a reload of the page, and follows what is kept until it is changed. */
export function useDraft(kept: Kept, key: string) {
  const [draft, change] = useReducer(
    changed,
    null,
    () => read(sessionStorage.getItem(key)) ?? startFrom(baseOf(kept)),
  );
  const now = baseOf(kept);
  if (!isChanged(draft)) {
    if (!isCurrent(draft.base, now)) change({ do: 'rebase', base: now });
  } else {
    // A session looked at for the first time beside this draft.
    const unseen = sessionsOf(now).filter(([id]) => !(Number(id) in draft.base.sessionVersions));
    if (unseen.length > 0)
      change({
        do: 'accept',
        classVersion: draft.base.classVersion,
        sessionVersions: { ...draft.base.sessionVersions, ...Object.fromEntries(unseen) },
      });
  }

  useEffect(() => {
    if (isChanged(draft)) sessionStorage.setItem(key, written(draft));
    else sessionStorage.removeItem(key);
  }, [draft, key]);

  return { draft, change, isChanged: isChanged(draft), moved: movedOn(draft, kept) };
}

export type DraftDoing = ReturnType<typeof useDraft>;
