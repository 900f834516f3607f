import { useState } from 'react';
import { useHold } from '@/api/clients';
import { keyKeeper } from '@/api/request-key';

/** What is said of a warning sign while it is being written, and the one press that raises it. */
export function useRaise(clientId: number, sessionId?: number) {
  const hold = useHold(clientId);
  const [keyOf] = useState(keyKeeper);
  const [signs, setSigns] = useState<string[]>([]);
  const [happened, setHappened] = useState('');
  const [done, setDone] = useState('');
  const raise = () => {
    const body = {
      sessionId: sessionId ?? null,
      signs,
      happened: happened.trim(),
      done: done.trim(),
    };
    hold.mutate({ body, key: keyOf(body) });
  };
  return { hold, raise, signs, setSigns, happened, setHappened, done, setDone };
}
