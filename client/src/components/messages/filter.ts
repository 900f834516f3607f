import type { MessageFilter } from '@/api/messages';
import type { MessageStatus } from '@/api/types';

const statuses: Record<MessageStatus, string> = {
  waiting: 'Still to be sent',
  refused: 'Could not be delivered',
  sent: 'Sent',
  dropped: 'Not sent',
};

const isStatus = (text: unknown): text is MessageStatus =>
  typeof text === 'string' && Object.hasOwn(statuses, text);

export const statusChoices = (Object.keys(statuses) as MessageStatus[]).map((value) => ({
  value,
  label: statuses[value],
}));

/** What the address says is looked at; `message` is the one that is open. */
export const messageFilterIn = (
  search: Record<string, unknown>,
): MessageFilter & { message?: number } => ({
  status: isStatus(search.status) ? search.status : undefined,
  kind: typeof search.kind === 'string' ? (search.kind as MessageFilter['kind']) : undefined,
  find: typeof search.find === 'string' ? search.find : undefined,
  message: typeof search.message === 'number' ? search.message : undefined,
});
