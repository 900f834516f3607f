import type { ReactNode } from 'react';
import type { TapeData } from '@/api/types';
import { fullDate, shortDay } from '@/components/time/days';
import { VerdictPath } from '@/components/verdict/shapes';
import { verdictWords } from '@/components/verdict/words';
import type { Scale } from './scale';
import { widthOf } from './words';
import classes from './tape.module.css';

interface StripProps {
  scale: Scale;
  /** Whether stages lie on the part after the birth. */
  covered: boolean;
  top: number;
  height: number;
  children: ReactNode;
}

/** The tape itself: its edge, a tick a week, numbers, and a seam where the weeks after begin. */
export function Strip({ scale, covered, top, height, children }: StripProps) {
  return (
    <g>
      <rect
        x={0.5}
        y={top}
        width={scale.width - 1}
        height={height}
        rx={3}
        className={classes.strip}
      />
      {children}
      {scale.ticks.map(({ x, week, numbered }, index) => (
        <g key={index}>
          <path d={`M${x} ${top}v${numbered ? 10 : 5}`} className={classes.tick} />
          {numbered && (
            <text x={x + 3} y={top + 22} className={classes.number}>
              {week}
            </text>
          )}
        </g>
      ))}
      {scale.turn !== null && scale.width - scale.turn > 70 && !covered && (
        <text x={(scale.turn + scale.width) / 2} y={top + height - 10} className={classes.stage}>
          after birth
        </text>
      )}
      {scale.turn !== null && (
        <path
          d={`M${scale.turn - 2} ${top - 4}v${height + 8}M${scale.turn + 2} ${top - 4}v${height + 8}`}
          className={classes.turn}
        />
      )}
      <rect
        x={0.5}
        y={top}
        width={scale.width - 1}
        height={height}
        rx={3}
        className={classes.edge}
      />
    </g>
  );
}

interface LettersProps {
  scale: Scale;
  letters: TapeData['letters'];
  top: number;
}

/** How long a clearance letter holds: a line with ends, under the tape. */
export function Letters({ scale, letters, top }: LettersProps) {
  return letters.map(({ from, to }) => {
    const left = scale.at(from);
    const right = scale.at(to);
    const label = 'letter';
    const beside = right + widthOf(label) + 8 < scale.width;
    return (
      <g key={`${from}${to}`} className={classes.letter}>
        <title>{`Clearance letter from ${fullDate(from)} to ${fullDate(to)}`}</title>
        <path d={`M${left} ${top - 3}v7M${left} ${top}H${right}M${right} ${top - 3}v7`} />
        <text x={beside ? right + 5 : left - 5} y={top + 4} textAnchor={beside ? 'start' : 'end'}>
          {label}
        </text>
      </g>
    );
  });
}

export interface Note {
  key: string;
  x: number;
  text: string;
}

interface NotesProps {
  notes: Note[];
  rows: number[];
  top: number;
  from: number;
  width: number;
}

/** Dates written out, each hanging by a thread from its place on the tape. */
export function Notes({ notes, rows, top, from, width }: NotesProps) {
  return notes.map(({ key, x, text }, index) => {
    const y = top + (rows[index] ?? 0) * 18 + 12;
    const half = widthOf(text) / 2 + 2;
    const middle = Math.min(Math.max(x, half), Math.max(width - half, half));
    return (
      <g key={key}>
        <path d={`M${x} ${from}V${y - 11}`} className={classes.thread} />
        <text x={middle} y={y} className={classes.note}>
          {text}
        </text>
      </g>
    );
  });
}

interface TodayProps {
  x: number;
  age?: string | null;
  from: number;
  to: number;
  width: number;
}

export function Today({ x, age, from, to, width }: TodayProps) {
  const text = age == null ? 'today' : `today ${age}`;
  const half = widthOf(text) / 2 + 7;
  const middle = Math.min(Math.max(x, half), width - half);
  return (
    <g>
      <path d={`M${x} ${from}V${to}`} className={classes.today} />
      <rect x={middle - half} y={0} width={half * 2} height={20} rx={3} className={classes.tag} />
      <text x={middle} y={14} className={classes.tagText}>
        {text}
      </text>
    </g>
  );
}

interface BookingsProps {
  marks: { booking: TapeData['bookings'][number]; x: number }[];
  rows: number[];
  base: number;
  size: number;
}

export function Bookings({ marks, rows, base, size }: BookingsProps) {
  return marks.map(({ booking, x }, index) => (
    <g
      key={booking.bookingId}
      className={classes.booking}
      data-verdict={booking.verdict}
      transform={`translate(${x - size / 2} ${base - ((rows[index] ?? 0) + 1) * (size + 1)})`}
    >
      <title>
        {`${shortDay(booking.on)}: ${booking.className}, ${verdictWords[booking.verdict].toLowerCase()}${booking.status === 'waiting' ? ', waiting' : ''}`}
      </title>
      <svg width={size - 2} height={size - 2} x={1} y={1} viewBox="0 0 16 16">
        <VerdictPath verdict={booking.verdict} />
      </svg>
      {booking.status === 'waiting' && (
        <path d={`M1 ${size}h${size - 2}`} className={classes.queue} />
      )}
    </g>
  ));
}

/** Bookings too close together to draw: that they are there, and no more. */
export function Dots({ marks, y }: { marks: BookingsProps['marks']; y: number }) {
  return marks.map(({ booking, x }) => (
    <circle key={booking.bookingId} cx={x} cy={y} r={2.2} className={classes.dot} />
  ));
}
