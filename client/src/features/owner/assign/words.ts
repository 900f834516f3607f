import type {
  AssignedSession,
  AssignmentResult,
  AssignmentRun,
  AssignmentScope,
  TermAim,
} from '@/api/types';
import { dayAndMonth, fullDate, longDay } from '@/components/time/days';

/** What the search is at, as the owner reads it. */
export const aimWords: Record<TermAim, string> = {
  unstaffed: 'Finding somebody for as many sessions as can be',
  bent: 'Bending as little as can be',
  changes: 'Changing as little of today’s plan as can be',
  wishes: 'Meeting wishes',
  load: 'Sharing the load evenly',
};

export const scopeWords: Record<AssignmentScope, string> = {
  unstaffed: 'Only sessions that nobody teaches yet',
  nobodyBooked: 'Those, and all in which nobody has a seat yet',
  all: 'All that have not begun',
};

export const statusWords = ({ status, discarded, draftId }: AssignmentRun) => {
  if (discarded) return 'put aside';
  if (draftId != null) return 'opened as a draft';
  switch (status) {
    case 'running':
      return 'being worked out';
    case 'finished':
      return 'worked out, waiting for you';
    case 'outOfTime':
      return 'out of time, best so far kept';
    case 'cancelled':
      return 'cancelled, best so far kept';
    case 'cutOff':
      return 'cut off when the program was stopped';
    case 'failed':
      return 'went wrong';
  }
};

/** How far what is shown can be trusted to be the best. */
export const endWords = ({ status }: AssignmentRun, { aims }: AssignmentResult) => {
  const open = aims.filter(({ proven }) => !proven).map(({ aim }) => aimWords[aim].toLowerCase());
  if (open.length === 0) return 'Nothing better exists within these rules.';
  const why =
    status === 'finished'
      ? 'A better one may exist'
      : 'It ended before its work was done, so a better one may exist';
  return `${why}: ${open.join('; ')}.`;
};

export const hours = (minutes: number) => {
  const [whole, rest] = [Math.floor(minutes / 60), minutes % 60];
  return rest === 0 ? `${whole} h` : `${whole} h ${String(rest).padStart(2, '0')}`;
};

export const count = (n: number, one: string, more = `${one}s`) =>
  n === 1 ? `1 ${one}` : `${n} ${more}`;

export const spanWords = ({ from, to }: { from: string; to: string }) =>
  `${dayAndMonth(from)} to ${fullDate(to)}`;

export const sessionWords = ({ on, startsLocal, className }: AssignedSession) =>
  `${longDay(on)}, ${startsLocal}: ${className}`;
