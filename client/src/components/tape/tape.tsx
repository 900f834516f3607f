import { VisuallyHidden } from '@mantine/core';
import { useElementSize } from '@mantine/hooks';
import { useId } from 'react';
import type { TapeData } from '@/api/types';
import { dayAndMonth, fullDate } from '@/components/time/days';
import { Weaves, weaveId } from './patterns';
import { Bookings, Letters, Notes, type Note, Strip, Today } from './pieces';
import { rowsOf, scaleOf } from './scale';
import { fitted, tapeWords, widthOf } from './words';
import classes from './tape.module.css';

interface TapeProps {
  tape: TapeData;
  /** Whose tape: `Her time` at the desk, `My time` on her own page. */
  name: string;
  age?: string | null;
  nextStage?: { name: string; on: string } | null;
}

const markSize = 15;
const strip = { height: 58 };

/** Her time, drawn as the tape a midwife measures with. */
export function Tape(props: TapeProps) {
  const { ref, width } = useElementSize();
  return (
    <figure className={classes.figure} ref={ref}>
      {width > 0 && <Drawing {...props} width={width} />}
      <VisuallyHidden>
        <figcaption>
          {tapeWords(props.tape, props).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </figcaption>
      </VisuallyHidden>
    </figure>
  );
}

function Drawing({ tape, name, age, nextStage, width }: TapeProps & { width: number }) {
  const id = useId();
  const scale = scaleOf(tape, width);
  const marks = tape.bookings.map((booking) => ({
    booking,
    x: scale.at(booking.on),
    width: markSize,
  }));
  const rows = rowsOf(marks);
  const above = 26 + Math.max(0, ...rows.map((row) => row + 1)) * (markSize + 1);
  const bottom = above + strip.height;
  const notes = notesOf(tape, scale.at, nextStage);
  const noteRows = rowsOf(notes.map(({ text, x }) => inside(x, widthOf(text) + 16, width)));
  const lettersAt = bottom + 9;
  const notesAt = lettersAt + (tape.letters.length > 0 ? 24 : 10);
  const height = notesAt + (Math.max(-1, ...noteRows) + 1) * 18 + 4;

  return (
    <svg
      className={classes.tape}
      width={width}
      height={height}
      role="img"
      aria-label={`${name}: ${age ?? 'a tape'} today`}
    >
      <Weaves id={id} stages={tape.bands.map(({ stage }) => stage)} />
      <Strip scale={scale} top={above} height={strip.height}>
        {tape.bands.map((band) => {
          const left = scale.at(band.from);
          const right = band.to == null ? width : scale.at(band.to);
          const label = fitted(band.name, right - left);
          return (
            <g key={band.stage}>
              <rect
                x={left}
                y={above + 30}
                width={Math.max(right - left, 0)}
                height={strip.height - 30}
                fill={`url(#${weaveId(id, band.stage)})`}
              />
              <path d={`M${left} ${above + 30}V${bottom}`} className={classes.seam} />
              {label !== '' && (
                <>
                  <rect
                    x={(left + right) / 2 - widthOf(label) / 2 - 4}
                    y={above + 34}
                    width={widthOf(label) + 8}
                    height={20}
                    rx={2}
                    className={classes.patch}
                  />
                  <text x={(left + right) / 2} y={above + 48} className={classes.stage}>
                    {label}
                  </text>
                </>
              )}
            </g>
          );
        })}
      </Strip>
      <Letters scale={scale} letters={tape.letters} top={lettersAt} />
      <Notes notes={notes} rows={noteRows} top={notesAt} from={bottom} width={width} />
      <Today x={scale.at(tape.today)} age={age} from={18} to={bottom + 4} width={width} />
      <Bookings marks={marks} rows={rows} base={above - 3} size={markSize} />
    </svg>
  );
}

function notesOf(
  tape: TapeData,
  at: (day: string) => number,
  nextStage: TapeProps['nextStage'],
): Note[] {
  const notes: Note[] = [];
  if (nextStage != null)
    notes.push({
      key: 'next',
      x: at(nextStage.on),
      text: `${nextStage.name} from ${dayAndMonth(nextStage.on)}`,
    });
  if (tape.bornOn != null)
    notes.push({ key: 'birth', x: at(tape.bornOn), text: `birth ${fullDate(tape.bornOn)}` });
  else if (tape.dueDate != null)
    notes.push({ key: 'due', x: at(tape.dueDate), text: `due ${fullDate(tape.dueDate)}` });
  return notes;
}

/** A label as wide as this, moved so that it stays on the page. */
export const inside = (x: number, labelWidth: number, width: number) => ({
  x: Math.min(Math.max(x, labelWidth / 2), Math.max(width - labelWidth / 2, labelWidth / 2)),
  width: labelWidth,
});
