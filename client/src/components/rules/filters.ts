import type { CatalogueMovement, Rule, RuleOutcome } from '@/api/types';

export interface RuleFilter {
  find?: string;
  stage?: string;
  factor?: string;
  trait?: string;
  outcome?: RuleOutcome;
  /** Only what nobody has read in a text yet. */
  memory?: boolean;
}

export interface MovementFilter {
  find?: string;
  group?: string;
  trait?: string;
}

export const outcomes: readonly RuleOutcome[] = [
  'note',
  'asTaught',
  'adapted',
  'replaced',
  'leftOut',
  'letter',
  'notSuitable',
];

const text = (search: Record<string, unknown>, name: string) => {
  const value = search[name];
  return typeof value === 'string' && value !== ''
    ? value
    : // The router reads a search for `14` as a number.
      typeof value === 'number'
      ? String(value)
      : undefined;
};

export const ruleFilterIn = (search: Record<string, unknown>): RuleFilter => ({
  find: text(search, 'find'),
  stage: text(search, 'stage'),
  factor: text(search, 'factor'),
  trait: text(search, 'trait'),
  outcome: outcomes.find((outcome) => outcome === search.outcome),
  memory: search.memory === true ? true : undefined,
});

export const movementFilterIn = (search: Record<string, unknown>): MovementFilter => ({
  find: text(search, 'find'),
  group: text(search, 'group'),
  trait: text(search, 'trait'),
});

const folded = (words: string) =>
  words
    .normalize('NFD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase();

/** Every word that is looked for stands somewhere in the texts, in any order. */
export const hasWords = (texts: readonly string[], find = '') => {
  const within = folded(texts.join(' '));
  return folded(find)
    .split(/\s+/)
    .every((word) => within.includes(word));
};

export const matchingRules = (rules: readonly Rule[], filter: RuleFilter) =>
  rules.filter(
    (rule) =>
      (filter.stage === undefined || rule.stages.includes(filter.stage)) &&
      (filter.factor === undefined || rule.factor === filter.factor) &&
      (filter.trait === undefined || rule.traits.includes(filter.trait)) &&
      (filter.outcome === undefined || rule.outcome === filter.outcome) &&
      (filter.memory !== true || rule.source.fromMemory) &&
      hasWords(
        [
          rule.id.replaceAll('-', ' '),
          rule.id,
          rule.speaks,
          ...rule.when,
          rule.forHer,
          rule.forInstructor,
          rule.source.cite,
        ],
        filter.find,
      ),
  );

export const matchingMovements = (
  movements: readonly CatalogueMovement[],
  filter: MovementFilter,
) =>
  movements.filter(
    ({ name, group, position, traits, equipment, cue }) =>
      (filter.group === undefined || group === filter.group) &&
      (filter.trait === undefined ||
        position.code === filter.trait ||
        traits.some(({ code }) => code === filter.trait)) &&
      hasWords(
        [name, group, position.name, ...traits.map((trait) => trait.name), ...equipment, cue],
        filter.find,
      ),
  );
