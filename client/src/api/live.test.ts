import { describe, expect, it } from 'vitest';
import { staleAfter } from './live';

describe('Word of a change', () => {
  it('makes every list of sessions, every client’s choices and every draft stale when a session changed', () => {
    const stale = staleAfter({ topic: 'session', id: 5 });
    for (const key of ['sessions', 'clients', 'drafts']) expect(stale).toContainEqual([key]);
  });

  it('makes one client stale when only she changed', () => {
    expect(staleAfter({ topic: 'client', id: 5 })).toContainEqual(['clients', 5]);
  });

  it('makes the letters that wait stale when a client changed: one may have been filed or read', () => {
    expect(staleAfter({ topic: 'client', id: 5 })).toContainEqual(['letters']);
  });

  it('makes nothing stale by way of greeting', () => {
    expect(staleAfter({ topic: 'open' })).toEqual([]);
  });
});
