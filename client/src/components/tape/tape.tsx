import { VisuallyHidden } from '@mantine/core';
import { useElementSize } from '@mantine/hooks';
import { useId } from 'react';
import type { TapeData } from '@/api/types';
import { dayAndMonth, fullDate } from '@/components/time/days';
import { Band } from './band';
import { Loupe, loupeFor, loupeHeight } from './loupe';
import { Weaves } from './patterns';
import { Bookings, Dots, Letters, Notes, type Note, Strip, Today } from './pieces';
import { rowsOf, scaleOf } from './scale';
import { tapeWords, widthOf } from './words';
import classes from './tape.module.css';

interface TapeProps {
  tape: TapeData;
  /** Whose tape: `Your time` on her own page. */
  name: string;
  age?: string | null;
  nextStage?: { name: string; on: string } | null;
}

const markSize = 15;
const stripHeight = 58;
const bandsFrom = 30;
const noteHeight = 18;

/** Her time, drawn as the tape a midwife measures with. */
export function Tape(props: TapeProps) {
  const { ref, width } = useElementSize();
  return (
    <figure className={classes.figure} ref={ref}>
      {width > 0 && <Drawing {...props} width={width} />}
      <VisuallyHidden component="figcaption">
        {tapeWords(props.tape, props).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </VisuallyHidden>
    </figure>
  );
}

function Drawing({ tape, name, age, nextStage, width }: TapeProps & { width: number }) {
  const id = useId();
  const scale = scaleOf(tape, width);
  const today = scale.at(tape.today);
  const loupe = loupeFor(tape, width);

  const marks = tape.bookings.map((booking) => ({
    booking,
    x: scale.at(booking.on),
    width: markSize,
  }));
  const rows = rowsOf(marks);
  const lanes = loupe ? 0.5 : Math.max(0, ...rows.map((row) => row + 1));
  const top = 26 + lanes * (markSize + 1);
  const bottom = top + stripHeight;

  const notes = notesOf(tape, scale.at, nextStage);
  const noteRows = rowsOf(notes.map(({ text, x }) => inside(x, widthOf(text) + 16, width)));
  const lettersAt = bottom + 9;
  const notesAt = lettersAt + (tape.letters.length > 0 ? 24 : 10);
  const notesEnd = notesAt + (Math.max(-1, ...noteRows) + 1) * noteHeight + 4;
  const height = loupe ? notesEnd + 10 + loupeHeight(tape, width) : notesEnd;

  return (
    <svg
      className={classes.tape}
      width={width}
      height={height}
      role="img"
      aria-label={`${name}, drawn as a tape; in words below`}
    >
      <Weaves id={id} stages={tape.bands.map(({ stage }) => stage)} />
      <Strip scale={scale} covered={tape.bornOn != null} top={top} height={stripHeight}>
        {tape.bands.map((band) => (
          <Band
            key={band.stage}
            id={id}
            band={band}
            scale={scale}
            ends={tape.bornOn == null ? (scale.turn ?? width) : width}
            today={today}
            top={top + bandsFrom}
            bottom={bottom}
          />
        ))}
      </Strip>
      {loupe && <Loupe tape={tape} scale={scale} from={bottom} top={notesEnd + 6} />}
      <Letters scale={scale} letters={tape.letters} top={lettersAt} />
      <Notes notes={notes} rows={noteRows} top={notesAt} from={bottom} width={width} />
      <Today x={today} age={age} from={18} to={bottom + 4} width={width} />
      {loupe ? (
        <Dots marks={marks} y={top - 5} />
      ) : (
        <Bookings marks={marks} rows={rows} base={top - 3} size={markSize} />
      )}
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
const inside = (x: number, labelWidth: number, width: number) => ({
  x: Math.min(Math.max(x, labelWidth / 2), Math.max(width - labelWidth / 2, labelWidth / 2)),
  width: labelWidth,
});
