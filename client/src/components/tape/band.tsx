import type { TapeData } from '@/api/types';
import { addDays } from '@/components/time/days';
import type { Scale } from './scale';
import { weaveId } from './patterns';
import { fitted, widthOf } from './words';
import classes from './tape.module.css';

interface BandProps {
  id: string;
  band: TapeData['bands'][number];
  scale: Scale;
  /** Where a stage without a last day ends: the birth while it is awaited, else the tape. */
  ends: number;
  /** Where today's line runs, which a label keeps clear of. */
  today: number;
  top: number;
  bottom: number;
}

/** One stage's stretch of tape, woven its own way and labelled where there is room. */
export function Band({ id, band, scale, ends, today, top, bottom }: BandProps) {
  const left = scale.at(band.from);
  const right = band.to == null ? ends : scale.at(addDays(band.to, 1));
  const [from, to] = clearOf(today, left, right);
  const label = fitted(band.name, to - from);
  const middle = (from + to) / 2;
  return (
    <g>
      <rect
        x={left}
        y={top}
        width={Math.max(right - left, 0)}
        height={bottom - top}
        fill={`url(#${weaveId(id, band.stage)})`}
      />
      <path d={`M${left} ${top}V${bottom}`} className={classes.seam} />
      {label !== '' && (
        <>
          <rect
            x={middle - widthOf(label) / 2 - 4}
            y={top + 4}
            width={widthOf(label) + 8}
            height={20}
            rx={2}
            className={classes.patch}
          />
          <text x={middle} y={top + 18} className={classes.stage}>
            {label}
          </text>
        </>
      )}
    </g>
  );
}

/** The longer side of a stretch that a line divides; the whole when the line is elsewhere. */
const clearOf = (line: number, left: number, right: number): [number, number] => {
  if (line <= left || line >= right) return [left, right];
  return line - left > right - line ? [left, line] : [line, right];
};
