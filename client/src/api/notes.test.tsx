// @vitest-environment jsdom
import { QueryClient } from '@tanstack/react-query';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { drafts, type Draft } from './note-drafts';
import { sendDrafts } from './notes';
import { Problem } from './problem';

const about = { accountId: 1, sessionId: 7, clientId: 3 };
const draft = (given: Partial<Draft> = {}): Draft => ({
  ...about,
  text: 'Held the wall.',
  sending: true,
  ...given,
});
const note = (text: string, version = 1) => ({ ...about, id: 40, text, version, isMine: true });

interface Sent {
  body: { text: string };
}
const post = vi.fn<(path: string, sent: Sent) => Promise<object>>();
const put = vi.fn<(path: string, sent: Sent) => Promise<object>>();

vi.mock('./client', () => ({
  api: {
    POST: (path: string, sent: Sent) => post(path, sent),
    PUT: (path: string, sent: Sent) => put(path, sent),
  },
  ok: (asked: Promise<object>) => asked,
}));

describe('A note that was written', () => {
  beforeEach(() => {
    post.mockReset();
    put.mockReset();
  });
  afterEach(() => drafts.clear());

  it('is gone from the device once the server has it', async () => {
    post.mockResolvedValue(note('Held the wall.'));
    drafts.put(draft());
    await sendDrafts(new QueryClient(), 1);
    expect(drafts.of(about)).toBeUndefined();
    expect(sessionStorage.getItem('studio.note-drafts')).toBeNull();
  });

  it('waits, words and all, while the server cannot be reached', async () => {
    post.mockRejectedValue(new Problem(0, {}));
    drafts.put(draft());
    await sendDrafts(new QueryClient(), 1);
    expect(drafts.of(about)).toEqual(draft());
  });

  it('keeps its words and says why when it is refused', async () => {
    post.mockRejectedValue(new Problem(409, { detail: 'Too late.', code: 'note-closed' }));
    drafts.put(draft());
    await sendDrafts(new QueryClient(), 1);
    expect(drafts.of(about)).toMatchObject({
      text: 'Held the wall.',
      sending: false,
      refused: 'Too late.',
    });
  });

  it('goes as a change of the version it began from', async () => {
    put.mockResolvedValue(note('Held the wall.', 3));
    drafts.put(draft({ from: { id: 40, version: 2 } }));
    await sendDrafts(new QueryClient(), 1);
    expect(post).not.toHaveBeenCalled();
    expect(put.mock.calls[0]?.[1].body).toEqual({ text: 'Held the wall.', version: 2 });
  });

  it('keeps what was written on while it was under way, as a change of what was saved', async () => {
    post.mockImplementationOnce(() => {
      drafts.put(draft({ text: 'Held the wall. Then not.', sending: false }));
      return Promise.resolve(note('Held the wall.'));
    });
    drafts.put(draft());
    await sendDrafts(new QueryClient(), 1);
    expect(drafts.of(about)).toMatchObject({
      text: 'Held the wall. Then not.',
      from: { id: 40, version: 1 },
    });
  });

  it('is not sent for somebody else who uses the device now', async () => {
    drafts.put(draft());
    await sendDrafts(new QueryClient(), 2);
    expect(post).not.toHaveBeenCalled();
  });
});
