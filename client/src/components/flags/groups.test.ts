import { describe, expect, it } from 'vitest';
import type { Flag } from '@/api/types';
import { grouped, waitingFor } from './groups';

const flag = (id: number, more: Partial<Flag>) =>
  ({
    id,
    kind: 'letter',
    severity: 'attention',
    text: `flag ${id}`,
    since: '2027-03-01',
    isNew: true,
    clientId: 1,
    ...more,
  }) as Flag;

describe('Flags', () => {
  it('of one kind about one client are one thing to look at', () => {
    expect(grouped([flag(1, {}), flag(2, {}), flag(3, { clientId: 2 })])).toHaveLength(2);
  });

  it('stand with the heaviest first, a group weighing what its heaviest does', () => {
    const groups = grouped([
      flag(1, { clientId: 1 }),
      flag(2, { clientId: 2 }),
      flag(3, { clientId: 2, severity: 'urgent' }),
    ]);
    expect(groups.map(({ severity }) => severity)).toEqual(['urgent', 'attention']);
  });

  it('wait for somebody unless they are mere notes or read', () => {
    const notes = flag(1, { severity: 'info' });
    const read = flag(2, { clientId: 2, isNew: false });
    expect(waitingFor([notes, read, flag(3, { clientId: 3 })])).toBe(1);
  });
});
