import type { TapeData } from '@/api/types';
import { addDays, dayAndMonth, daysBetween, mondayOf } from '@/components/time/days';
import { Bookings } from './pieces';
import { rowsOf, type Scale } from './scale';
import classes from './tape.module.css';

const daysShown = 35;
const markSize = 17;
const stripHeight = 24;

/** Where a loupe is needed: bookings, on a tape too narrow to tell them apart. */
export const loupeFor = (tape: TapeData, width: number) => width < 560 && tape.bookings.length > 0;

interface LoupeProps {
  tape: TapeData;
  scale: Scale;
  /** The foot of the tape, from which the loupe is drawn out. */
  from: number;
  top: number;
}

/** The coming weeks once more, large: the stretch of tape in which she has bookings. */
export function Loupe({ tape, scale, from, top }: LoupeProps) {
  const { width } = scale;
  const start = addDays(tape.today, -2);
  const end = addDays(start, daysShown);
  const at = (day: string) => 8 + (daysBetween(start, day) / daysShown) * (width - 16);
  const shown = tape.bookings.filter(({ on }) => on >= start && on <= end);
  const marks = shown.map((booking) => ({ booking, x: at(booking.on), width: markSize }));
  const rows = rowsOf(marks);
  const strip = top + loupeRows(rows) * (markSize + 1) + 6;
  const mondays = Array.from({ length: 6 }, (_, week) => addDays(mondayOf(start), week * 7)).filter(
    (day) => day >= start && day <= end,
  );
  return (
    <g>
      <path
        d={`M${scale.at(start)} ${from}L0.5 ${strip}M${scale.at(end)} ${from}L${width - 0.5} ${strip}`}
        className={classes.thread}
      />
      <rect
        x={0.5}
        y={strip}
        width={width - 1}
        height={stripHeight}
        rx={3}
        className={classes.strip}
      />
      <rect
        x={0.5}
        y={strip}
        width={width - 1}
        height={stripHeight}
        rx={3}
        className={classes.edge}
      />
      {mondays.map((day) => (
        <g key={day}>
          <path d={`M${at(day)} ${strip}v8`} className={classes.tick} />
          <text x={at(day) + 3} y={strip + 18} className={classes.number}>
            {dayAndMonth(day)}
          </text>
        </g>
      ))}
      <path d={`M${at(tape.today)} ${strip - 4}v${stripHeight + 4}`} className={classes.today} />
      <Bookings marks={marks} rows={rows} base={strip - 3} size={markSize} />
    </g>
  );
}

const loupeRows = (rows: readonly number[]) => Math.max(0, ...rows.map((row) => row + 1));

/** How tall a loupe over these bookings comes out. */
export function loupeHeight(tape: TapeData, width: number) {
  const at = (day: string) => (daysBetween(tape.today, day) / daysShown) * (width - 16);
  const marks = tape.bookings.map(({ on }) => ({ x: at(on), width: markSize }));
  return loupeRows(rowsOf(marks)) * (markSize + 1) + stripHeight + 12;
}
