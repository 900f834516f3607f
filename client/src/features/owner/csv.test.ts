import { describe, expect, it } from 'vitest';
import { readCsv } from './csv';

// RFC 4180, section 2.
describe('A CSV file', () => {
  it('is rows of fields, ended by LF or CRLF', () => {
    expect(readCsv('a,b\r\n1,2\n3,')).toEqual([
      ['a', 'b'],
      ['1', '2'],
      ['3', ''],
    ]);
  });

  it('may hold commas, quotes and line ends in quoted fields', () => {
    expect(readCsv('"Price, Anwen","said ""yes""","two\r\nlines"')).toEqual([
      ['Price, Anwen', 'said "yes"', 'two\r\nlines'],
    ]);
  });

  it('may begin with a byte order mark, which is no part of the first name', () => {
    expect(readCsv('\uFEFFname\nAnwen')).toEqual([['name'], ['Anwen']]);
  });

  it('is read no further than asked, and empty lines are no rows', () => {
    expect(readCsv('a,b\n\n1,2\n3,4', 2)).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
  });
});
