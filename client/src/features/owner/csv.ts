/** Rows of fields, by RFC 4180: quoted fields may hold commas, line ends and doubled quotes. */
export function readCsv(text: string, mostRows = Infinity): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = '';
  let quoted = false;
  const endRow = () => {
    row.push(field);
    if (row.length > 1 || field !== '') rows.push(row);
    row = [];
    field = '';
  };
  for (let at = text.startsWith('\uFEFF') ? 1 : 0; at < text.length; at += 1) {
    const letter = text.charAt(at);
    if (quoted) {
      if (letter !== '"') field += letter;
      else if (text[at + 1] === '"') {
        field += '"';
        at += 1;
      } else quoted = false;
    } else if (letter === '"' && field === '') quoted = true;
    else if (letter === ',') {
      row.push(field);
      field = '';
    } else if (letter === '\n' || letter === '\r') {
      if (letter === '\r' && text[at + 1] === '\n') at += 1;
      endRow();
      if (rows.length >= mostRows) return rows;
    } else field += letter;
  }
  if (field !== '' || row.length > 0) endRow();
  return rows;
}
