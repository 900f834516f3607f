import type { Person, Planned } from '@/api/types';
import { allDifferently, differently } from './who-does-what';

type Mover = Pick<Person, 'movements'>;

/** The movements that somebody does differently, and the people who do something differently. */
export const onlyDifferent = <P extends Mover, M extends Pick<Planned, 'position'>>(
  plan: readonly M[],
  people: readonly P[],
) => ({
  plan: plan.filter(({ position }) =>
    people.some((her) => differently(her, position) !== undefined),
  ),
  people: people.filter((her) => allDifferently(her).length > 0),
});
