import { expect, test } from 'vitest';
import { parseCsv, parseRecords } from './parse-csv.ts';

test.each([
  ['', []],
  ['a,b', [['a', 'b']]],
  ['a,b\n', [['a', 'b']]],
  [
    'a,b\r\nc,\n',
    [
      ['a', 'b'],
      ['c', ''],
    ],
  ],
  ['a,', [['a', '']]],
  [
    ',\n,',
    [
      ['', ''],
      ['', ''],
    ],
  ],
  ['"a,b","c""d","e\nf"', [['a,b', 'c"d', 'e\nf']]],
  ['""', [['']]],
])('%j', (text, rows) => {
  expect(parseCsv(text)).toEqual(rows);
});

test('what is not CSV is refused', () => {
  expect(() => parseCsv('a,"b')).toThrow('not closed');
  expect(() => parseCsv('a"b')).toThrow('in the middle');
  expect(() => parseCsv('"a"b')).toThrow('after a field');
});

test('records go by the names of the first row', () => {
  expect(parseRecords('a,b\n1,2\n')).toEqual([{ a: '1', b: '2' }]);
  expect(() => parseRecords('a,b\n1\n')).toThrow('row 2 has 1 fields, not 2');
});
