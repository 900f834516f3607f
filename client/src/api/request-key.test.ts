import { describe, expect, it } from 'vitest';
import { keyKeeper, newKey } from './request-key';

describe('A key of a request', () => {
  it('is another for every press', () => {
    expect(newKey()).toMatch(/^[0-9a-f]{32}$/);
    expect(newKey()).not.toBe(newKey());
  });

  it('stays for the same words and changes with them', () => {
    const keyOf = keyKeeper();
    const first = keyOf({ signs: ['a'], happened: '' });
    expect(keyOf({ signs: ['a'], happened: '' })).toBe(first);
    const second = keyOf({ signs: ['a'], happened: 'more' });
    expect(second).not.toBe(first);
    expect(keyOf({ signs: ['a'], happened: 'more' })).toBe(second);
  });

  it('is kept by each form for itself', () => {
    expect(keyKeeper()({})).not.toBe(keyKeeper()({}));
  });
});
