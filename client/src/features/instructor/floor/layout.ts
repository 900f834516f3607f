/** Mats in rows; the first row is the one nearest the instructor. A null is a mat nobody booked. */
export function layOut(people: number, seats: number, columns: number): (number | null)[][] {
  const rows = Math.ceil(people / columns);
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => row * columns + column)
      .filter((mat) => mat < Math.max(people, seats))
      .map((mat) => (mat < people ? mat : null)),
  );
}

const widest = 5;
const roomPerMat = 165;

/** As many mats side by side as can be read from two metres: two on a phone, at most five. */
export const columnsFor = (width: number, people: number) =>
  Math.max(Math.min(Math.floor(width / roomPerMat), widest, people), 2);

/** Where an arrow leads from a mat. Up is further from the instructor; off the floor is nowhere. */
export function stepFrom(mat: number, key: string, people: number, columns: number): number {
  const rowStart = mat - (mat % columns);
  const to = {
    ArrowRight: mat % columns === columns - 1 ? mat : mat + 1,
    ArrowLeft: mat % columns === 0 ? mat : mat - 1,
    ArrowUp: mat + columns,
    ArrowDown: mat - columns,
    Home: rowStart,
    End: Math.min(rowStart + columns, people) - 1,
  }[key];
  return to === undefined || to < 0 || to >= people ? mat : to;
}
