import type { RefObject } from 'react';

/** What the find box and the plain input that stands in for it have in common. */
export interface FindInput {
  ref: RefObject<HTMLInputElement | null>;
  text: string;
  onText: (text: string) => void;
}

export const findInput = {
  'aria-label': 'Find a client by name, phone or e-mail',
  placeholder: 'Name, phone or e-mail',
};
