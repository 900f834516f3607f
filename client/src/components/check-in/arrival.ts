import type { Person } from '@/api/types';

/** Away; here and well by her own word; here, and nobody has asked her or a warning came since. */
export type Arrival = 'away' | 'well' | 'unasked';

export const arrivalOf = ({ checkedInAt, wellAt }: Pick<Person, 'checkedInAt' | 'wellAt'>) =>
  (checkedInAt == null ? 'away' : wellAt == null ? 'unasked' : 'well') satisfies Arrival;

export const arrivalWords: Record<Arrival, string> = {
  away: 'not here yet',
  well: 'here, all well',
  unasked: 'here, not asked how she is',
};
