import { useElementSize } from '@mantine/hooks';
import { useId } from 'react';
import type { Move, Verdict } from '@/api/types';
import { addDays, dayAndMonth, daysBetween, shortDay } from '@/components/time/days';
import { VerdictPath } from '@/components/verdict/shapes';
import { Weaves, weaveId } from './patterns';
import { fitted, widthOf } from './words';
import classes from './tape.module.css';

const size = 16;
const top = { to: 18, strip: 40, from: 78 };

/** The stretch of her tape round the line she crosses: bookings that fall behind it, and what takes their place. */
export function MoveTape({ move }: { move: Move }) {
  const { ref, width } = useElementSize();
  return (
    <div ref={ref} style={{ minHeight: 116 }}>
      {width > 0 && <Drawing move={move} width={width} />}
    </div>
  );
}

function Drawing({ move, width }: { move: Move; width: number }) {
  const id = useId();
  const days = [
    move.crossesOn,
    ...move.steps.flatMap(({ from, to }) => [from.on, to?.on ?? from.on]),
  ].sort();
  const start = addDays(days[0] ?? move.crossesOn, -4);
  const end = addDays(days.at(-1) ?? move.crossesOn, 4);
  const at = (day: string) => (daysBetween(start, day) / daysBetween(start, end)) * width;
  const line = at(move.crossesOn);
  const label = fitted(move.crossesToName, width - line - 8);
  const date = dayAndMonth(move.crossesOn);
  const dateAt = Math.min(Math.max(line, widthOf(date) / 2), width - widthOf(date) / 2);

  return (
    <svg
      className={classes.tape}
      width={width}
      height={116}
      role="img"
      aria-label={`${move.crossesToName} from ${date}; the list beside it says what moves where`}
    >
      <Weaves id={id} stages={[move.crossesTo]} />
      <rect x={0.5} y={top.strip} width={width - 1} height={26} rx={3} className={classes.strip} />
      <rect
        x={line}
        y={top.strip}
        width={Math.max(width - line, 0)}
        height={26}
        fill={`url(#${weaveId(id, move.crossesTo)})`}
      />
      {weeks(start, end).map((day) => (
        <path key={day} d={`M${at(day)} ${top.strip}v5`} className={classes.tick} />
      ))}
      {label !== '' && (
        <>
          <rect
            x={line + 5}
            y={top.strip + 5}
            width={widthOf(label) + 6}
            height={18}
            className={classes.patch}
          />
          <text x={line + 8} y={top.strip + 18}>
            {label}
          </text>
        </>
      )}
      <rect x={0.5} y={top.strip} width={width - 1} height={26} rx={3} className={classes.edge} />
      <path d={`M${line} ${top.to - 4}V${top.from + size + 2}`} className={classes.line} />
      <text x={dateAt} y={11} className={classes.note}>
        {date}
      </text>
      {move.steps.map(({ bookingId, from, to, fit }) => (
        <g key={bookingId}>
          {to != null && (
            <path
              d={`M${at(from.on)} ${top.from}C${at(from.on)} ${top.strip + 34} ${at(to.on)} ${top.strip - 8} ${at(to.on)} ${top.to + size}`}
              className={classes.arc}
            />
          )}
          <Mark
            x={at(from.on)}
            y={top.from}
            verdict="notSuitable"
            says={`${shortDay(from.on)} ${from.className}: ${to == null ? 'nothing found in its place' : 'no longer suits'}`}
          />
          {to != null && fit != null && (
            <Mark
              x={at(to.on)}
              y={top.to}
              verdict={fit.verdict}
              says={`${shortDay(to.on)} ${to.className}: takes its place`}
            />
          )}
        </g>
      ))}
    </svg>
  );
}

interface MarkProps {
  x: number;
  y: number;
  verdict: Verdict;
  says: string;
}

const Mark = ({ x, y, verdict, says }: MarkProps) => (
  <g
    className={classes.booking}
    data-verdict={verdict}
    transform={`translate(${x - size / 2} ${y})`}
  >
    <title>{says}</title>
    <svg width={size - 2} height={size - 2} x={1} y={1} viewBox="0 0 16 16">
      <VerdictPath verdict={verdict} />
    </svg>
  </g>
);

const weeks = (start: string, end: string) =>
  Array.from({ length: Math.floor(daysBetween(start, end) / 7) + 1 }, (_, week) =>
    addDays(start, week * 7),
  );
