import { describe, expect, it } from 'vitest';
import type { CatalogueMovement, Rule } from '@/api/types';
import {
  hasWords,
  matchingMovements,
  matchingRules,
  movementFilterIn,
  ruleFilterIn,
} from './filters';

const rule = (over: Partial<Rule>): Rule => ({
  id: 'supine-from-14-weeks',
  about: 'movements',
  speaks: 'Flat on the back',
  traits: ['supine'],
  outcome: 'replaced',
  when: ['From 14w 0d on'],
  stages: ['second-trimester', 'third-trimester'],
  factor: null,
  policy: null,
  counts: true,
  forHer: 'There is something else for you instead of lying flat on your back.',
  forInstructor: 'not flat on the back',
  lift: null,
  source: { cite: 'Somebody, Some text (2019)', fromMemory: false },
  ...over,
});

describe('looking for words', () => {
  it('wants every word, in any order, without minding case or accents', () => {
    expect(hasWords(['Lying flat on your back'], 'BACK lying')).toBe(true);
    expect(hasWords(['Lying flat on your back'], 'back bend')).toBe(false);
    expect(hasWords(['Césarienne'], 'cesar')).toBe(true);
  });

  it('finds everything when nothing is looked for', () => {
    expect(hasWords(['Anything'])).toBe(true);
    expect(hasWords(['Anything'], '  ')).toBe(true);
  });
});

describe('rules', () => {
  const back = rule({});
  const memory = rule({
    id: 'C01 acog',
    factor: 'bleeding',
    outcome: 'notSuitable',
    stages: ['first-trimester'],
    traits: [],
    source: { cite: 'Elsewhere; from memory', fromMemory: true },
  });
  const found = (filter: Parameters<typeof matchingRules>[1]) =>
    matchingRules([back, memory], filter).map(({ id }) => id);

  it('are all there without a filter', () => {
    expect(found({})).toEqual([back.id, memory.id]);
  });

  it('are found by their words, their id and their source', () => {
    expect(found({ find: 'flat back' })).toContain(back.id);
    expect(found({ find: '14 weeks' })).toContain(back.id);
    expect(found({ find: 'elsewhere' })).toEqual([memory.id]);
  });

  it('are narrowed by each filter, and by several at once', () => {
    expect(found({ stage: 'third-trimester' })).toEqual([back.id]);
    expect(found({ factor: 'bleeding' })).toEqual([memory.id]);
    expect(found({ trait: 'supine' })).toEqual([back.id]);
    expect(found({ outcome: 'notSuitable' })).toEqual([memory.id]);
    expect(found({ memory: true })).toEqual([memory.id]);
    expect(found({ memory: true, trait: 'supine' })).toEqual([]);
  });
});

describe('movements', () => {
  const plank: CatalogueMovement = {
    code: 'front-plank',
    name: 'Front plank',
    group: 'Core',
    position: { code: 'front-support', name: 'Front plank or hover' },
    traits: [{ code: 'wrist-load', name: 'Weight on the wrists' }],
    effort: 5,
    equipment: ['mat'],
    cue: 'Long from head to heels.',
    options: [],
    rules: [],
  };

  it('are found by position, trait, group and words', () => {
    expect(matchingMovements([plank], { trait: 'front-support' })).toHaveLength(1);
    expect(matchingMovements([plank], { trait: 'wrist-load', group: 'Core' })).toHaveLength(1);
    expect(matchingMovements([plank], { group: 'Stretch' })).toHaveLength(0);
    expect(matchingMovements([plank], { find: 'heels plank' })).toHaveLength(1);
  });
});

describe('filters in the address', () => {
  it('are read, and nonsense is dropped', () => {
    expect(ruleFilterIn({ find: 14, outcome: 'replaced', memory: true, stage: ['x'] })).toEqual({
      find: '14',
      outcome: 'replaced',
      memory: true,
      stage: undefined,
      factor: undefined,
      trait: undefined,
    });
    expect(ruleFilterIn({ outcome: 'perhaps', memory: 'yes' }).outcome).toBeUndefined();
    expect(movementFilterIn({ group: '' }).group).toBeUndefined();
  });
});
