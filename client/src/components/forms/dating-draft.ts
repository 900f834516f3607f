import type { Evidence } from '@/api/types';

/** The dating form as it stands while being filled in. Days are ISO strings. */
export interface DatingDraft {
  lastPeriod: string | null;
  cycleDays: number | string;
  scanDate: string | null;
  scanWeeks: number | string;
  scanDays: number | string;
  transferDate: string | null;
  embryoDays: string;
  stated: string | null;
}

export const emptyDraft: DatingDraft = {
  lastPeriod: null,
  cycleDays: '',
  scanDate: null,
  scanWeeks: '',
  scanDays: '',
  transferDate: null,
  embryoDays: '5',
  stated: null,
};

/** What has been given completely enough to reckon with; a scan needs its day and its weeks. */
export function evidenceOf(draft: DatingDraft): Evidence {
  const { lastPeriod, cycleDays, scanDate, scanWeeks, scanDays, transferDate, stated } = draft;
  return {
    lastPeriod,
    cycleDays: lastPeriod === null || cycleDays === '' ? null : Number(cycleDays),
    scan:
      scanDate === null || scanWeeks === ''
        ? null
        : { date: scanDate, weeks: Number(scanWeeks), days: Number(scanDays) },
    transfer:
      transferDate === null ? null : { date: transferDate, embryoDays: Number(draft.embryoDays) },
    stated,
  };
}
