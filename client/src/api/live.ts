import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { clientQueries } from './clients';
import { connection } from './connection';
import { flagQueries } from './flags';
import { incidentQueries } from './incidents';
import { jobQueries } from './jobs';
import { letterQueries } from './letters';
import { messageQueries } from './messages';
import { moveQueries } from './moves';
import { erasureQueries } from './records';
import { letGoQueries, seriesQueries } from './series';
import { sessionsQueries } from './sessions';

interface Changed {
  /** `open` is the stream's own greeting. */
  topic:
    | 'open'
    | 'session'
    | 'client'
    | 'flags'
    | 'moves'
    | 'jobs'
    | 'rules'
    | 'erasures'
    | 'messages'
    | 'mail';
  id?: number | null;
}

/** Which answers a change makes stale. A booking changes what everybody else may choose. */
export const staleAfter = ({ topic, id }: Changed): readonly (readonly unknown[])[] => {
  switch (topic) {
    case 'open':
      return [];
    case 'session':
      return [
        sessionsQueries.all(),
        clientQueries.all(),
        seriesQueries.list().queryKey,
        letGoQueries.all(),
      ];
    case 'client':
      return [
        id == null ? clientQueries.all() : clientQueries.of(id),
        sessionsQueries.all(),
        letterQueries.all(),
        incidentQueries.all(),
      ];
    case 'flags':
      return [flagQueries.all(), sessionsQueries.all()];
    case 'moves':
      return [moveQueries.all()];
    case 'jobs':
      return [jobQueries.all()];
    case 'erasures':
      return [erasureQueries.all()];
    case 'messages':
    case 'mail':
      return [messageQueries.all()];
    case 'rules':
      // Every verdict may be another one.
      return [[]];
  }
};

const retryAfter = 5_000;

/**
 * Keeps the screen true while it is looked at. A hidden page hangs up, since browsers allow few
 * connections to one place, and asks for everything again when it is shown. So does a page whose
 * server is gone, once it is back.
 */
export function useLive() {
  const queries = useQueryClient();
  useEffect(() => {
    let source: EventSource | undefined;
    let again: ReturnType<typeof setTimeout> | undefined;
    let missed = false;

    const hangUp = () => {
      clearTimeout(again);
      source?.close();
      source = undefined;
    };
    const listen = () => {
      hangUp();
      source = new EventSource('/api/live');
      source.addEventListener('changed', (event: MessageEvent<string>) => {
        for (const queryKey of staleAfter(JSON.parse(event.data) as Changed))
          void queries.invalidateQueries({ queryKey });
      });
      source.onopen = () => {
        if (missed) void queries.invalidateQueries();
        missed = false;
      };
      source.onerror = () => {
        missed = true;
        hangUp();
        void connection.probe();
        again = setTimeout(follow, retryAfter);
      };
    };
    const follow = () => {
      if (connection.isLost()) {
        missed = true;
        hangUp();
      } else if (document.visibilityState === 'visible') listen();
      else {
        missed = true;
        hangUp();
      }
    };

    follow();
    document.addEventListener('visibilitychange', follow);
    const leave = connection.subscribe(follow);
    return () => {
      leave();
      document.removeEventListener('visibilitychange', follow);
      hangUp();
    };
  }, [queries]);
}

/** Calls back with rows read and rows in all while an import runs. */
export function useImportProgress(onRead: (read: number, of: number) => void) {
  useEffect(() => {
    const source = new EventSource('/api/live');
    source.addEventListener('import', (event: MessageEvent<string>) => {
      const { read, of } = JSON.parse(event.data) as { read: number; of: number };
      onRead(read, of);
    });
    source.onerror = () => source.close();
    return () => source.close();
  }, [onRead]);
}
