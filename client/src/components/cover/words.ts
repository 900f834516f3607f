import type { Candidate } from '@/api/types';

/** What her standing says, in a word or two. */
export const standingWords: Record<Candidate['standing'], string> = {
  free: 'Can be asked',
  withCare: 'Only if you accept',
  declines: 'Not that day, as she said',
  notFree: 'Not free',
};

/** The same for those who only ring: what there is to accept stays between her and the owner. */
export const standingForDesk: Record<Candidate['standing'], string> = {
  ...standingWords,
  withCare: 'Perhaps: the owner has to agree',
};

/** As a phone dials it. */
export const dialled = (phone: string) => `tel:${phone.replace(/[^+\d]/g, '')}`;
