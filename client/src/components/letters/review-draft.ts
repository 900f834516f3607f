import type { LetterReview } from '@/api/types';

/** What is typed off a letter; an input left empty holds an empty string. */
export interface ReviewDraft {
  issuedBy: string;
  issuedOn: string | null;
  expiresOn: string | null;
  leaveOut: string[];
  effortMost: number | string;
  heartRateMost: number | string;
  words: string;
  replacesEarlier: boolean;
}

export const emptyReview: ReviewDraft = {
  issuedBy: '',
  issuedOn: null,
  expiresOn: null,
  leaveOut: [],
  effortMost: '',
  heartRateMost: '',
  words: '',
  replacesEarlier: false,
};

/** What is still missing, by field. The server checks the rest. */
export const missingIn = ({ issuedBy, issuedOn, expiresOn }: ReviewDraft) => ({
  issuedBy: issuedBy.trim() === '' ? 'Who wrote it? Copy the name from the letter.' : null,
  issuedOn: issuedOn === null ? 'Enter the day it was written.' : null,
  expiresOn:
    expiresOn === null ? 'Enter its last day. If it names none, choose a cautious one.' : null,
});

const number = (typed: number | string) => (typeof typed === 'number' ? typed : null);

/** The draft as it is sent; null while a day is missing. */
export const reviewOf = (draft: ReviewDraft): LetterReview | null => {
  const { issuedBy, issuedOn, expiresOn, leaveOut, words, replacesEarlier } = draft;
  if (issuedOn === null || expiresOn === null) return null;
  return {
    issuedBy: issuedBy.trim(),
    issuedOn,
    expiresOn,
    leaveOut,
    effortMost: number(draft.effortMost),
    heartRateMost: number(draft.heartRateMost),
    words: words.trim() === '' ? null : words.trim(),
    replacesEarlier,
  };
};
