import { describe, expect, it } from 'vitest';
import {
  changed,
  isChanged,
  isSame,
  minutesOf,
  read,
  startFrom,
  wanted,
  written,
  type Change,
  type Draft,
} from './draft';

const base = {
  items: [
    { movement: 'squat', minutes: 10 },
    { movement: 'leg-slides', minutes: 20 },
    { movement: 'squat', minutes: 5 },
  ],
  classVersion: 3,
  sessionVersions: { 7: 1 },
};
const start = startFrom(base);
const after = (...changes: Change[]) => changes.reduce<Draft>(changed, start);
const codes = ({ items }: Draft) => items.map(({ movement }) => movement).join(' ');
const keyAt = (draft: Draft, at: number) => draft.items[at]?.key ?? '';

describe('A draft', () => {
  it('begins as the plan it is made from, each place with a key of its own', () => {
    expect(wanted(start.items)).toEqual(base.items);
    expect(new Set(start.items.map(({ key }) => key)).size).toBe(3);
    expect(isChanged(start)).toBe(false);
    expect(minutesOf(start.items)).toBe(35);
  });

  it.each([
    [
      'adds at the end',
      { do: 'add', movement: 'bridge', minutes: 3 },
      'squat leg-slides squat bridge',
    ],
    ['moves down', { do: 'move', from: 0, to: 2 }, 'leg-slides squat squat'],
    ['moves up', { do: 'move', from: 1, to: 0 }, 'leg-slides squat squat'],
    ['does not move off the end', { do: 'move', from: 2, to: 3 }, 'squat leg-slides squat'],
    ['does not move off the top', { do: 'move', from: 0, to: -1 }, 'squat leg-slides squat'],
  ] as const)('%s', (_, change, order) => {
    expect(codes(after(change))).toBe(order);
  });

  it('removes the one pressed and not another of the same kind', () => {
    const next = changed(start, { do: 'remove', key: keyAt(start, 2) });
    expect(wanted(next.items)).toEqual(base.items.slice(0, 2));
  });

  it('is not changed once everything is undone, step by step', () => {
    const draft = after(
      { do: 'add', movement: 'bridge', minutes: 3 },
      { do: 'move', from: 0, to: 1 },
      { do: 'remove', key: keyAt(start, 1) },
    );
    expect(codes(draft)).toBe('squat squat bridge');
    const back = [1, 2, 3].reduce<Draft>((now) => changed(now, { do: 'undo' }), draft);
    expect(isChanged(back)).toBe(false);
    expect(changed(back, { do: 'undo' })).toBe(back);
    const forth = [1, 2, 3].reduce<Draft>((now) => changed(now, { do: 'redo' }), back);
    expect(codes(forth)).toBe('squat squat bridge');
    expect(changed(forth, { do: 'redo' })).toBe(forth);
  });

  it('forgets what was undone as soon as something else is done', () => {
    const draft = after(
      { do: 'move', from: 0, to: 1 },
      { do: 'undo' },
      { do: 'add', movement: 'bridge', minutes: 1 },
    );
    expect(changed(draft, { do: 'redo' })).toBe(draft);
  });

  it('takes typing in one field as one step', () => {
    const key = keyAt(start, 0);
    const draft = after(
      { do: 'minutes', key, minutes: 1 },
      { do: 'minutes', key, minutes: 12 },
      { do: 'minutes', key: keyAt(start, 1), minutes: 4 },
    );
    expect(draft.past).toHaveLength(2);
    expect(draft.items.map(({ minutes }) => minutes)).toEqual([12, 4, 5]);
    expect(changed(changed(draft, { do: 'undo' }), { do: 'undo' }).items).toEqual(start.items);
  });

  it('makes no step of what changes nothing', () => {
    expect(after({ do: 'move', from: 1, to: 1 })).toBe(start);
    expect(after({ do: 'replace', items: base.items })).toBe(start);
  });

  it('keeps the keys of what stays when a proposal replaces the rest', () => {
    const draft = after({
      do: 'replace',
      items: base.items.map((item, at) => (at === 1 ? { movement: 'bridge', minutes: 20 } : item)),
    });
    expect(draft.items.map(({ key }) => key === '')).toEqual([false, false, false]);
    expect([0, 2].map((at) => keyAt(draft, at))).toEqual([0, 2].map((at) => keyAt(start, at)));
    expect(keyAt(draft, 1)).not.toBe(keyAt(start, 1));
    expect(isSame(changed(draft, { do: 'undo' }).items, base.items)).toBe(true);
  });

  it('stays as it is when she decides to save over what somebody else saved', () => {
    const draft = after(
      { do: 'add', movement: 'bridge', minutes: 3 },
      { do: 'accept', classVersion: 4, sessionVersions: { 7: 2 } },
    );
    expect(draft.base.classVersion).toBe(4);
    expect(codes(draft)).toBe('squat leg-slides squat bridge');
    expect(isChanged(draft)).toBe(true);
  });
});

describe('A draft kept in the browser', () => {
  it('comes back with what it was made from', () => {
    const draft = after({ do: 'add', movement: 'bridge', minutes: 3 });
    const back = read(written(draft));
    expect(back && wanted(back.items)).toEqual(wanted(draft.items));
    expect(back?.base).toEqual(base);
    expect(back && isChanged(back)).toBe(true);
  });

  it.each([
    ['nothing', null],
    ['no JSON', '{'],
    ['something else', '{"items":[]}'],
    [
      'a list of something else',
      '{"base":{"items":[],"classVersion":1,"sessionVersions":{}},"items":[1]}',
    ],
    ['null', 'null'],
  ])('is none when there is %s', (_, text) => {
    expect(read(text)).toBeNull();
  });
});
