import type { Letter, LetterTerms } from '@/api/types';

/** What a letter asks for, a line each. */
export const termLines = (terms: LetterTerms): string[] => [
  ...(terms.leaveOutWords.length > 0 ? [`Leave out: ${terms.leaveOutWords.join(', ')}`] : []),
  ...(terms.effortMost == null ? [] : [`Effort of at most ${terms.effortMost} of 10`]),
  ...(terms.heartRateMost == null
    ? []
    : [`Heart rate of at most ${terms.heartRateMost} beats a minute`]),
  ...(terms.words == null ? [] : [`For the instructor: ${terms.words}`]),
  ...(terms.replacesEarlier ? ['Takes the place of what earlier letters asked for'] : []),
];

/** What kind of thing was handed in. */
export const keptAs = ({ onPaper, mediaType }: Letter) =>
  mediaType === 'application/pdf'
    ? 'PDF'
    : mediaType != null
      ? 'picture'
      : onPaper
        ? 'on paper at the studio'
        : 'file';

/** The letter to open once one is done: the one after it, else the first of those left. */
export const nextAfter = <T extends { id: number }>(waiting: readonly T[], done: number) => {
  const at = waiting.findIndex(({ id }) => id === done);
  return waiting[at + 1] ?? waiting.find(({ id }) => id !== done);
};
