import { describe, expect, it } from 'vitest';
import { nameOf, valuesOf } from './policy-values';

describe('what may be chosen', () => {
  it('is words, a range, or both', () => {
    expect(valuesOf('avoid|by-symptoms')).toEqual({ words: ['avoid', 'by-symptoms'] });
    expect(valuesOf('4..7')).toEqual({ words: [], range: { from: 4, to: 7 } });
    expect(valuesOf('none|1..3650')).toEqual({ words: ['none'], range: { from: 1, to: 3650 } });
  });

  it('takes weeks and days for words', () => {
    expect(valuesOf('14w0d|symptoms').words).toEqual(['14w0d', 'symptoms']);
  });
});

it('a policy is named without its hyphens', () => {
  expect(nameOf('supine-from')).toBe('supine from');
});
