import { addDays, daysBetween } from '@/components/time/days';

const term = 40 * 7;
const daysPastDue = 14;

/** The ends of a tape, and what divides it. ISO days. */
export interface Span {
  start: string;
  end: string;
  dueDate?: string | null;
  bornOn?: string | null;
}

export interface Tick {
  x: number;
  /** Completed weeks: of the pregnancy, or since the birth on the part after it. */
  week: number;
  numbered: boolean;
}

/** One evenly divided stretch of tape; weeks are counted from its first day. */
interface Part {
  from: string;
  to: string;
  left: number;
  width: number;
}

export interface Scale {
  width: number;
  /** Where a day lies, in pixels; a day off the tape is put at its end. */
  at: (day: string) => number;
  /** Where the weeks after the birth begin; null when the tape has one part only. */
  turn: number | null;
  ticks: Tick[];
}

/** The share of the part before the birth: most of it while that is where she is. */
const beforeShare = { awaited: 0.84, born: 0.36 };

/**
 * A tape in up to two parts, each evenly divided, so that neither the pregnancy nor the weeks after
 * are too small to read. Week 0 is the left end whenever a due date is known, and the second part
 * begins at the birth or, while it is awaited, at 42w 0d.
 */
export function scaleOf(span: Span, width: number): Scale {
  const parts = partsOf(span, width);
  const last = parts.at(-1);
  const at = (day: string) => {
    const part = parts.find(({ to }) => day < to) ?? last;
    if (part === undefined) return 0;
    const share = daysBetween(part.from, day) / daysBetween(part.from, part.to);
    return part.left + Math.min(Math.max(share, 0), 1) * part.width;
  };
  return {
    width,
    at,
    turn: parts[1]?.left ?? null,
    ticks: parts.flatMap(ticksOf),
  };
}

function partsOf({ start, end, dueDate, bornOn }: Span, width: number): Part[] {
  const zero = dueDate == null ? null : addDays(dueDate, -term);
  const turn = bornOn ?? (dueDate == null ? null : addDays(dueDate, daysPastDue));
  const from = zero ?? bornOn ?? start;
  if (zero === null || turn === null || end <= turn) {
    const to = turn !== null && zero !== null ? turn : end;
    return [{ from, to: to > from ? to : addDays(from, 7), left: 0, width }];
  }
  const left = width * (bornOn == null ? beforeShare.awaited : beforeShare.born);
  return [
    { from, to: turn, left: 0, width: left },
    { from: turn, to: end, left, width: width - left },
  ];
}

const steps = [1, 2, 4, 6, 12, 20];
const roomForNumber = 26;

function ticksOf(part: Part): Tick[] {
  const days = daysBetween(part.from, part.to);
  const weekWidth = (part.width / days) * 7;
  const step = steps.find((weeks) => weeks * weekWidth >= roomForNumber) ?? 52;
  return Array.from({ length: Math.floor(days / 7) + 1 }, (_, week) => ({
    x: part.left + week * weekWidth,
    week,
    numbered: week % step === 0 && week * weekWidth < part.width - 18,
  }));
}

/**
 * Lays things of some width beside each other and, where they would touch, one row further out.
 * Gives the row of each, 0 being nearest the tape.
 */
export function rowsOf(things: readonly { x: number; width: number }[]): number[] {
  const ends: number[] = [];
  const rows: number[] = [];
  const order = things.map((_, index) => index).sort((a, b) => left(things[a]) - left(things[b]));
  for (const index of order) {
    const start = left(things[index]);
    const free = ends.findIndex((end) => end <= start);
    const row = free === -1 ? ends.length : free;
    ends[row] = start + (things[index]?.width ?? 0);
    rows[index] = row;
  }
  return rows;
}

const left = (thing?: { x: number; width: number }) => (thing ? thing.x - thing.width / 2 : 0);
