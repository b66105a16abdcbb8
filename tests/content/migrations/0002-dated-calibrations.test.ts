/** From one calibration an instrument to a list of dated ones, with all that stands beside it. */
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { datedCalibrations } from '../../../src/content/migrations/0002-dated-calibrations.ts';

const PATH = 'instruments/meter.yaml';
const run = (text: string, path = PATH) => datedCalibrations.run(new Map([[path, text]]));
const last = (text: string) => run(text).at(-1)?.after ?? text;

const OLD = `# ours
name: "Meter"
calibration:           # by the school
  # of the day before the fair
  date: 2025-09-15

  validMonths: 24
  relative: 4          # k = 2
  reference: >-
    Lamp standard,
    in house
angularResponse: 1.5   # by its sheet
note: Slow.
`;

test('the block becomes the list’s entry, comments and all', () => {
  expect(last(OLD)).toBe(`# ours
name: "Meter"
calibrations:           # by the school
  # of the day before the fair
  - date: 2025-09-15

    validMonths: 24
    relative: 4          # k = 2
    reference: >-
      Lamp standard,
      in house
angularResponse: { f2: 1.5 }   # by its sheet
note: Slow.
`);
});

test('no value changes', () => {
  const { calibration, angularResponse, ...rest } = parse(OLD);
  expect(parse(last(OLD))).toEqual({ ...rest, calibrations: [calibration], angularResponse: { f2: angularResponse } });
});

test.each([
  ['in brackets', 'calibration: { date: 2025-01-01, relative: 4 } # x\nnote: a\n'],
  ['as the last field, without an end of line', 'note: a\ncalibration:\n    date: 2025-01-01\n    relative: 4'],
  [
    'with ends of lines of another system',
    'note: a\r\ncalibration:\r\n  date: 2025-01-01\r\n  relative: 4\r\nunit: W\r\n',
  ],
])('%s', (_, text) => {
  const { calibration, ...rest } = parse(text);
  expect(parse(last(text))).toEqual({ ...rest, calibrations: [calibration] });
  expect(last(text).includes('\r')).toBe(text.includes('\r'));
});

test.each([
  ['a list already', 'calibrations:\n  - date: 2025-01-01\nangularResponse: { f2: 2 }\n'],
  ['both: whoever wrote them has to choose', 'calibration: { date: 2025-01-01 }\ncalibrations: []\n'],
  ['nothing that can be read', 'calibration: { date: [\n'],
  ['no calibration that could be an entry', 'calibration: yes\n'],
])('%s is left as it is', (_, text) => expect(run(text)).toEqual([]));

test('other files are not looked at', () => {
  expect(run('calibration: { date: 2025-01-01 }\n', 'makers/meter.yaml')).toEqual([]);
});
