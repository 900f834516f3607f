import { useSyncExternalStore } from 'react';

/** Words about one person in one class that the server does not have yet. */
export interface Draft {
  accountId: number;
  sessionId: number;
  clientId: number;
  text: string;
  /** The note the change began from; none while there is no note. */
  from?: { id: number; version: number };
  /** Meant to be sent: it goes as soon as the server answers. */
  sending: boolean;
  /** Why the server would not have it; the words stay. */
  refused?: string;
}

export type About = Pick<Draft, 'accountId' | 'sessionId' | 'clientId'>;

// For as long as this tab is open and no longer: what is said of somebody's body is not left behind
// on a tablet that others use.
const place = 'studio.note-drafts';

const keyOf = ({ accountId, sessionId, clientId }: About) =>
  `${accountId}.${sessionId}.${clientId}`;

type Kept = Readonly<Record<string, Draft>>;

function read(): Kept {
  try {
    return JSON.parse(sessionStorage.getItem(place) ?? '{}') as Kept;
  } catch {
    return {};
  }
}

let kept: Kept = read();
const listeners = new Set<() => void>();

function set(next: Kept) {
  kept = next;
  try {
    if (Object.keys(next).length === 0) sessionStorage.removeItem(place);
    else sessionStorage.setItem(place, JSON.stringify(next));
  } catch {
    // Without room in the tab's store they are kept in memory alone.
  }
  for (const listener of listeners) listener();
}

export const drafts = {
  all: () => kept,
  of: (about: About): Draft | undefined => kept[keyOf(about)],
  put: (draft: Draft) => set({ ...kept, [keyOf(draft)]: draft }),
  drop: (about: About) =>
    set(Object.fromEntries(Object.entries(kept).filter(([key]) => key !== keyOf(about)))),
  clear: () => set({}),
  subscribe: (listener: () => void) => {
    listeners.add(listener);
    return () => void listeners.delete(listener);
  },
};

export const useDrafts = () => useSyncExternalStore(drafts.subscribe, drafts.all);

export const useDraft = (about: About) => useDrafts()[keyOf(about)];
