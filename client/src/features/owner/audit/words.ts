import type { AuditCheck, AuditEntry } from '@/api/types';

const partWords: Record<string, string> = {
  card: 'her card',
  fit: 'how classes suit her',
  roster: 'a roster she is on',
  dates: 'her dates',
  factors: 'what changes a class for her',
  screening: 'answers to the health questions',
  letter: 'letters',
  'letter file': 'the file of a letter',
  hold: 'a hold',
  incident: 'a warning sign',
  birth: 'the birth',
  'birth corrected': 'the birth, put right',
  'birth taken back': 'the birth, taken back',
  call: 'a call to her',
  return: 'the way back to classes',
  ending: 'the end of a pregnancy',
  sharing: 'what instructors may see by name',
  intake: 'her record as it came in',
  export: 'all that is held about her',
  erasure: 'the removal of what is held about her',
  trail: 'this trail',
};

const asWords: Record<string, string> = {
  owner: 'owner',
  reviewer: 'reads letters',
  herself: 'herself',
  instructor: 'instructor',
  frontDesk: 'front desk',
  program: 'by itself',
};

/** Which part of a record, in words; a part this page does not know yet is shown as it is called. */
export const partOf = ({ kind }: Pick<AuditEntry, 'kind'>) => partWords[kind] ?? kind;

/** As what somebody did it. */
export const asWhat = ({ seenAs }: Pick<AuditEntry, 'seenAs'>) => asWords[seenAs] ?? seenAs;

/** What a check of the whole trail came to. */
export const checkWords = ({ entries, whole, firstBroken }: AuditCheck) =>
  whole
    ? entries === 0
      ? 'The trail is whole: nothing has been written to it yet.'
      : `The trail is whole. None of its ${entries} entries was changed, dropped or slipped in.`
    : `The trail is broken at entry ${firstBroken ?? 1} of ${entries}: from there on, something was changed, dropped or slipped in. Keep a copy of the studio’s data as it is now, and ask whoever looks after the server.`;
