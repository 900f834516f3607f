import type { Severity, Verdict } from '@/api/types';

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
