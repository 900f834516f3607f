import { useQueryClient } from '@tanstack/react-query';
import { useCallback, useEffect, useEffectEvent, useRef, useState } from 'react';
import { useConnectionLost } from '@/api/connection';
import { Problem } from '@/api/problem';
import { saveDraft, screeningQueries } from '@/api/screenings';
import type { ScreeningForm } from '@/api/types';
import { areAgreed, carriedOver, type Answers } from '@/components/questions/answers';

/** How it is with what she answered last. */
export type Saving = 'nothing' | 'waiting' | 'saving' | 'saved' | 'lost' | 'refused';

const pause = 600;

/** Refusals that mean: these are no longer the questions. */
const outdated = (error: unknown) =>
  error instanceof Problem && (error.code === 'questions-changed' || error.code === 'not-asked');

/**
 * Her answers, kept on the server as she goes and nowhere in the browser. Before she agrees nothing is kept. When the
 * questions change meanwhile, what is still asked in the same words stays answered.
 */
export function useKeptAnswers(clientId: number, form: ScreeningForm) {
  const queries = useQueryClient();
  const lost = useConnectionLost();
  const [asked, setAsked] = useState(form);
  const [answers, setAnswers] = useState<Answers>(form.draft ?? {});
  const [saving, setSaving] = useState<Saving>(form.draft == null ? 'nothing' : 'saved');
  const [changed, setChanged] = useState(false);
  // What is to be saved, as of now; the page may be gone before it is drawn again.
  const now = useRef({ asked: form, answers, kept: form.draft != null, dirty: false });
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const line = useRef<Promise<void>>(Promise.resolve());

  const reload = useCallback(async () => {
    const fresh = await queries.query({ ...screeningQueries.form(clientId), staleTime: 0 });
    const left = carriedOver(now.current.answers, now.current.asked.questions, fresh.questions);
    now.current = { ...now.current, asked: fresh, answers: left, dirty: true };
    setAsked(fresh);
    setAnswers(left);
    setChanged(true);
  }, [queries, clientId]);

  const save = useCallback(
    (leaving = false) => {
      clearTimeout(timer.current);
      line.current = line.current.then(async () => {
        const { asked: shown, answers: given, dirty, kept } = now.current;
        const agreed = areAgreed(shown.questions, given);
        if (!dirty || (!agreed && !kept)) return;
        const isDirty = () => now.current.dirty;
        now.current.dirty = false;
        setSaving('saving');
        try {
          // She no longer agrees: what was kept is emptied.
          const body = { version: shown.version, answers: agreed ? given : {} };
          await saveDraft(clientId, body, leaving);
          now.current.kept = agreed;
          setSaving(isDirty() ? 'waiting' : agreed ? 'saved' : 'nothing');
        } catch (error) {
          now.current.dirty = true;
          if (outdated(error)) await reload().catch(() => undefined);
          setSaving(error instanceof Problem && error.status === 0 ? 'lost' : 'refused');
        }
      });
      return line.current;
    },
    [clientId, reload],
  );

  const later = useCallback(() => {
    clearTimeout(timer.current);
    timer.current = setTimeout(() => void save(), pause);
  }, [save]);

  const change = (next: Answers) => {
    now.current = { ...now.current, answers: next, dirty: true };
    setAnswers(next);
    setSaving(areAgreed(asked.questions, next) || now.current.kept ? 'waiting' : 'nothing');
    later();
  };

  /** Sends them, with nothing still on its way that could come after. */
  const send = async (post: (given: { version: number; answers: Answers }) => Promise<void>) => {
    clearTimeout(timer.current);
    now.current.dirty = false;
    await line.current;
    try {
      now.current.dirty = false;
      await post({ version: now.current.asked.version, answers: now.current.answers });
    } catch (error) {
      now.current.dirty = true;
      if (outdated(error)) await reload().catch(() => undefined);
      later();
      throw error;
    }
  };

  const again = useEffectEvent(() => {
    if (saving === 'lost') void save();
  });
  useEffect(() => {
    if (!lost) again();
  }, [lost]);

  useEffect(() => {
    const leave = () => {
      if (document.visibilityState === 'hidden') void save(true);
    };
    document.addEventListener('visibilitychange', leave);
    return () => {
      document.removeEventListener('visibilitychange', leave);
      void save(true);
    };
  }, [save]);

  return { asked, answers, saving, changed, change, send };
}
