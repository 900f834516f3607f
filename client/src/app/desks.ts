import type { Me, Role } from '@/api/types';

interface DeskLink {
  to: string;
  label: string;
  /** Lists of work show how much there is. */
  counts?: 'moves' | 'flags' | 'letters' | 'messages';
  /** It has pages below it, and is where one is on any of them. */
  holds?: boolean;
}

export interface Desk {
  path: string;
  name: string;
  roles: readonly Role[];
  links: readonly DeskLink[];
  /** How much waits there, shown wherever one is. */
  counts?: 'letters';
  /** Where the find box opens a card; a desk without it has no find box. */
  card?: '/desk/clients/$clientId' | '/studio/people/$clientId';
}

/** In the order in which a person with several roles lands. */
export const desks: readonly Desk[] = [
  {
    path: '/studio',
    name: 'Studio',
    roles: ['owner'],
    card: '/studio/people/$clientId',
    links: [
      { to: '/studio', label: 'Week' },
      { to: '/studio/series', label: 'Series', holds: true },
      { to: '/studio/closures', label: 'Closures' },
      { to: '/studio/people', label: 'People' },
      { to: '/studio/cover', label: 'Cover' },
      { to: '/studio/staff', label: 'Staff' },
      { to: '/studio/plans', label: 'Class plans' },
      { to: '/studio/rules', label: 'Rules', holds: true },
      { to: '/studio/incidents', label: 'Incidents' },
      { to: '/studio/messages', label: 'Messages', counts: 'messages', holds: true },
      { to: '/studio/audit', label: 'Audit' },
      { to: '/studio/erasures', label: 'Erasures', holds: true },
      { to: '/studio/jobs', label: 'Jobs' },
      { to: '/studio/import', label: 'Import' },
    ],
  },
  {
    path: '/desk',
    name: 'Front desk',
    roles: ['frontDesk', 'owner'],
    card: '/desk/clients/$clientId',
    links: [
      { to: '/desk', label: 'Day' },
      { to: '/desk/moves', label: 'Suggested moves', counts: 'moves' },
      { to: '/desk/flags', label: 'Flags', counts: 'flags' },
      { to: '/desk/let-go', label: 'To rebook' },
      { to: '/desk/waiting', label: 'Waiting' },
      { to: '/desk/new', label: 'New client' },
    ],
  },
  {
    path: '/letters',
    name: 'Letters',
    roles: ['reviewer', 'owner'],
    counts: 'letters',
    links: [
      { to: '/letters', label: 'To read', counts: 'letters' },
      { to: '/letters/read', label: 'Read lately' },
      { to: '/letters/find', label: 'Find by name' },
    ],
  },
  {
    path: '/teach',
    name: 'Teaching',
    roles: ['instructor'],
    links: [
      { to: '/teach', label: 'Next session' },
      { to: '/teach/week', label: 'My weeks' },
      { to: '/teach/cover', label: 'Cover' },
      { to: '/teach/plans', label: 'Class plans' },
      { to: '/teach/messages', label: 'Messages' },
      { to: '/teach/movements', label: 'Movements' },
      { to: '/teach/what-if', label: 'What if' },
    ],
  },
  {
    path: '/my',
    name: 'My classes',
    roles: ['client'],
    links: [
      { to: '/my', label: 'Classes' },
      { to: '/my/questions', label: 'Questions' },
      { to: '/my/letters', label: 'Letters' },
      { to: '/my/messages', label: 'Messages' },
      { to: '/my/details', label: 'About me' },
    ],
  },
];

export const desksOf = (me: Me) =>
  desks.filter((desk) => desk.roles.some((role) => me.roles.includes(role)));

export const landingOf = (me: Me) => desksOf(me)[0]?.path ?? '/sign-in';

export const deskAt = (path: string) =>
  desks.find((desk) => path === desk.path || path.startsWith(`${desk.path}/`));
