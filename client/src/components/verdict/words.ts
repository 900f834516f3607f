import type { MovementVerdict, Severity, Verdict } from '@/api/types';

export const verdictWords: Record<Verdict, string> = {
  suitable: 'Suits',
  withModifications: 'Suits with changes',
  needsClearance: 'Letter needed',
  notSuitable: 'Does not suit',
};

export const severityWords: Record<Severity, string> = {
  info: 'Note',
  attention: 'Mind',
  urgent: 'Act',
};

export const movementWords: Record<MovementVerdict, string> = {
  asTaught: 'As taught',
  adapted: 'Changed',
  replaced: 'Instead',
  leftOut: 'Left out',
};

/** How many people with a seat a session no longer suits. */
export const unsuitableWords = (count: number) =>
  count === 1 ? '1 person it no longer suits' : `${count} people it no longer suits`;
