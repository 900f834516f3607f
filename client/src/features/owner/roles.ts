import type { Account, Role } from '@/api/types';

export const roleWords: Record<Role, string> = {
  owner: 'owner',
  reviewer: 'reads letters',
  frontDesk: 'front desk',
  instructor: 'instructor',
  client: 'client',
};

/** In the order in which they are named. */
const order = Object.keys(roleWords) as Role[];

export const rolesOf = ({ roles }: Pick<Account, 'roles'>): Role[] => {
  const held = roles.split(',').map((role) => role.trim());
  return order.filter((role) => held.includes(role));
};

/** Roles that come with being somebody's account: neither given nor taken by hand. */
const tied: readonly Role[] = ['instructor', 'client'];

/** All of an account's roles once those given by hand are these. */
export const rolesWith = (account: Pick<Account, 'roles'>, given: readonly string[]): Role[] =>
  order.filter((role) =>
    tied.includes(role) ? rolesOf(account).includes(role) : given.includes(role),
  );

export const isTied = (role: Role) => tied.includes(role);
