import { describe, expect, it } from 'vitest';
import { draftOf, newRule, ruleOf, unfinished } from './rule-draft';

describe('a rule in the form', () => {
  it('is written in the order of the week, whatever was pressed first', () => {
    expect(ruleOf({ ...newRule(['TH', 'TU']), every: 2 })).toBe(
      'FREQ=WEEKLY;INTERVAL=2;BYDAY=TU,TH',
    );
    expect(ruleOf({ ...newRule(['MO']), ends: 'on', until: '2027-03-04' })).toBe(
      'FREQ=WEEKLY;UNTIL=20270304;BYDAY=MO',
    );
    expect(ruleOf({ ...newRule(['MO']), ends: 'after', count: 8 })).toBe(
      'FREQ=WEEKLY;COUNT=8;BYDAY=MO',
    );
  });

  it('comes back from what is kept', () => {
    for (const rule of [
      'FREQ=WEEKLY;BYDAY=TU',
      'FREQ=WEEKLY;INTERVAL=3;UNTIL=20270304;BYDAY=MO,SU',
      'FREQ=WEEKLY;COUNT=12;BYDAY=WE',
      'FREQ=MONTHLY;BYDAY=-1FR',
      'FREQ=WEEKLY;BYDAY=TU;WKST=SU',
    ])
      expect(ruleOf(draftOf(rule))).toBe(rule);
    expect(draftOf('FREQ=MONTHLY;BYDAY=-1FR').kind).toBe('own');
  });

  it('says what is missing before dates are asked for', () => {
    expect(unfinished(newRule())).toMatch(/day of the week/);
    expect(unfinished({ ...newRule(['MO']), ends: 'on' })).toMatch(/last day/);
    expect(unfinished({ ...newRule(), kind: 'own' })).toMatch(/rule/);
    expect(unfinished(newRule(['MO']))).toBeNull();
  });
});
