import { describe, expect, it } from 'vitest';
import { rolesOf, rolesWith } from './roles';

describe('The roles of an account', () => {
  it('are named in one order, however they are stored', () => {
    expect(rolesOf({ roles: 'frontDesk,owner' })).toEqual(['owner', 'frontDesk']);
  });

  it('keep an instructor an instructor when another is given', () => {
    expect(rolesWith({ roles: 'instructor' }, ['reviewer'])).toEqual(['reviewer', 'instructor']);
  });

  it('make nobody an instructor or a client by hand', () => {
    expect(rolesWith({ roles: 'frontDesk' }, ['frontDesk', 'instructor', 'client'])).toEqual([
      'frontDesk',
    ]);
  });

  it('can be taken away', () => {
    expect(rolesWith({ roles: 'frontDesk,reviewer' }, ['frontDesk'])).toEqual(['frontDesk']);
  });
});
