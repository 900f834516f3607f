import { describe, expect, it } from 'vitest';
import { Problem, wordsOf } from './problem';

describe('A refusal', () => {
  it('speaks in the server’s words', () => {
    const problem = new Problem(409, { code: 'overlap', detail: 'It overlaps another.' });
    expect(wordsOf(problem)).toBe('It overlaps another.');
    expect(problem.code).toBe('overlap');
  });

  it('names fields as forms do, however validation spelled them', () => {
    const problem = new Problem(400, { errors: { 'Scan.Weeks': ['Too many.', 'Really.'] } });
    expect(problem.fields).toEqual({ 'scan.weeks': 'Too many. Really.' });
  });

  it('says plainly when the server cannot be reached', () => {
    expect(wordsOf(new Problem(0, {}))).toContain('cannot be reached');
  });
});
