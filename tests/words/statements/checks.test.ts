import { expect, test } from 'vitest';
import type { Statement } from '../../../src/measure/statement.ts';
import { say } from '../../../src/words/say.ts';
import { FINDING_WORDS, HINT_WORDS } from '../../../src/words/statements/checks.ts';

const MILLIGAUSS = { unit: 'µT', smaller: 'mG', typed: 'mG', factor: 10 } as const;
const MICROWATTS = { unit: 'mW/m²', smaller: 'µW/m²', typed: 'uW/m2', factor: 1000 } as const;
const FIELD = { width: 203, height: 305 };

const SENTENCES: ReadonlyArray<readonly [Statement, string]> = [
  [
    { code: 'reading-below-reach', value: 0.05, unit: 'W', instrument: 'wattmeter', lowest: 0.1 },
    'A reading of 0.05 W is below what the wattmeter can show, 0.1 W. It is known to be small, not how small.',
  ],
  [
    { code: 'reading-at-display-end', value: 300, unit: 'mW/cm²', instrument: 'thermopile', highest: 300 },
    'A reading of 300 mW/cm² is at the end of what the thermopile can show, 300 mW/cm². There may be more than it shows.',
  ],
  [
    { code: 'grid-few-points', count: 1, fewest: 4 },
    'The mean is of 1 point of the field: fewer than 4 say more of where they lie than of the field.',
  ],
  [
    { code: 'distance-of-inches', of: 'magnetic', value: 6, reference: 15.24 },
    'The distance of the magnetic readings is 6 cm; the guide’s own is 15.2 cm, which is 6 in. Light and fields at 6 cm are far stronger.',
  ],
  [
    { code: 'distance-of-inches', of: 'claim', value: 6, reference: 15.24 },
    'The distance of the claimed irradiance is 6 cm; the guide’s own is 15.2 cm, which is 6 in. Light and fields at 6 cm are far stronger.',
  ],
  [
    { code: 'bench-too-near', value: 9.9, nearest: 10 },
    'The bench distance is 9.9 cm: nearer than 10 cm single LEDs show, and few meters read such oblique light rightly.',
  ],
  [
    { code: 'calibration-run-out', instrument: 'irradiance meter', due: '2025-12-31', session: '2026-03-02' },
    'The calibration of the irradiance meter ran out on 31 Dec 2025, before the session of 2 Mar 2026. Its stated uncertainty may no longer hold.',
  ],
  [
    {
      code: 'standard-beyond-limits',
      id: 'bench-lamp',
      standard: 'Bench lamp',
      instrument: 'Bench thermopile',
      date: '2026-03-02',
      session: '2026-03-02',
      side: 'above',
      value: 42.6,
      limit: 42.1961,
      centre: 41.2,
      share: 3.398,
      unit: 'mW/cm²',
    },
    'The bench thermopile read 42.6 mW/cm² from the bench lamp on the day of the session: above its control limit of 42.2 mW/cm², 3.4 % above the usual 41.2 mW/cm². What it read of the panel may be off by as much.',
  ],
  [
    {
      code: 'standard-beyond-limits',
      id: 'buzzer',
      standard: 'LED buzzer',
      instrument: 'Sound meter',
      date: '2026-03-01',
      session: '2026-03-02',
      side: 'below',
      value: 58.1,
      limit: 58.5,
      centre: 60,
      share: undefined,
      unit: 'dB(A)',
    },
    'The sound meter read 58.1 dB(A) from the LED buzzer on 1 Mar 2026, the nearest day to the session of 2 Mar 2026: below its control limit of 58.5 dB(A), 1.9 dB(A) below the usual 60 dB(A). What it read of the panel may be off by as much.',
  ],
  [
    {
      code: 'standard-not-read',
      id: 'bench-lamp',
      standard: 'Bench lamp',
      instrument: 'Bench thermopile',
      session: '2026-03-02',
      days: 7,
    },
    'The bench lamp was not read with the bench thermopile within 7 days of the session of 2 Mar 2026: whether the meter read as usual is not known.',
  ],
  [
    { code: 'combined-below-mode', combined: 100, mode: 'near-infrared', alone: 120.04 },
    'With both channels on the peak is 100 mW/cm², below 120 mW/cm² with near-infrared alone. The panel may limit its power with both on; otherwise a reading was mistyped.',
  ],
  [
    { code: 'efficiency-impossible', percent: 92, limit: 81 },
    'An efficiency of 92 % is not possible: the best red LEDs alone reach about 81 %. A reading, the LED area or the draw is wrong.',
  ],
  [
    { code: 'efficiency-odd', percent: 64.27, limit: 60 },
    'An efficiency of 64.3 % is odd: few LED panels come near 60 %. Look at the readings, the LED area and the draw again.',
  ],
  [
    { code: 'leds-far-apart', count: 60, field: FIELD, pitch: 32.123, most: 10 },
    'The 60 LEDs in a field of 203 × 305 cm lie 32.1 cm apart on average; in panels it is seldom more than 10 cm.',
  ],
  [
    { code: 'leds-close', count: 60, field: { width: 2.8, height: 3.1 }, pitch: 0.38, least: 0.4 },
    'The 60 LEDs in a field of 2.8 × 3.1 cm lie 0.38 cm apart on average; in panels it is seldom less than 0.4 cm.',
  ],
  [
    { code: 'field-too-long', field: { width: 251, height: 40 }, most: 250 },
    'An LED field of 251 × 40 cm is longer than 250 cm: higher than a door.',
  ],
  [
    { code: 'field-small-in-housing', field: { width: 7, height: 11 }, percent: 11.458, least: 25 },
    'The LED field, 7 × 11 cm, takes up 11.5 % of the housing’s area; it is seldom less than 25 %.',
  ],
  [
    { code: 'field-larger-than-housing', field: { width: 35, height: 61 }, housing: { width: 31, height: 66 } },
    'The LED field, 35 × 61 cm, does not fit into the housing, 31 × 66 cm. One of the two was measured or typed wrongly.',
  ],
  [
    { code: 'flicker-odd', percent: 0.14, instrument: 'sampler', limit: 'lowest', limitPercent: 0.5 },
    'Flicker of 0.14 % is odd: the sampler shows nothing under 0.5 %. As a fraction it would be 14 %.',
  ],
  [
    { code: 'flicker-odd', percent: 0.14, instrument: undefined, limit: 'step', limitPercent: 0.1 },
    'Flicker of 0.14 % is odd: the usual meter goes in steps of 0.1 %. As a fraction it would be 14 %.',
  ],
  [
    { code: 'grid-point-outlier', column: 2, row: 3, value: 140, likely: 125.04, z: 6.137, limit: 3.5 },
    'Grid point 2 of row 3 reads 140 mW/cm² where its row and column make 125 mW/cm² likely (modified z-score 6.14, limit 3.5). A hot or dead spot, or a slip of the hand: read it again.',
  ],
  [
    { code: 'instruments-not-named', kinds: ['irradiance', 'mains'], figures: 3, isRanked: false },
    'The session names no meter for irradiance, mains, so that 3 figures have no uncertainty, and the panel is not ranked.',
  ],
  [
    { code: 'instruments-not-named', kinds: ['flicker'], figures: 1, isRanked: true },
    'The session names no meter for flicker, so that 1 figure has no uncertainty.',
  ],
  [
    { code: 'modes-not-adding-up', sum: 120, combined: 100, percent: 20 },
    'Red and near-infrared add up to 120 mW/cm², 20 % above the 100 mW/cm² read with both on. Their peaks may lie at different places, or the panel shares its power between channels.',
  ],
  [
    { code: 'modes-not-adding-up', sum: 80, combined: 100, percent: -20 },
    'Red and near-infrared add up to 80 mW/cm², 20 % below the 100 mW/cm² read with both on. Their peaks may lie at different places, or the panel shares its power between channels.',
  ],
  [
    { code: 'peak-below-mean', peak: 70, mean: 80 },
    'The peak, 70 mW/cm², is below the mean of the grid, 80 mW/cm²: a highest value can’t be. The two were not read at one distance, or one was mistyped.',
  ],
  [
    { code: 'price-stale', days: 91, date: '2026-01-01', limit: 90 },
    'The price is 91 days old (1 Jan 2026); after 90 days it should be looked up again.',
  ],
  [
    { code: 'room-unlike-others', ...MILLIGAUSS, field: 'magnetic', value: 0.5, times: 10, count: 5, usual: 0.05 },
    'The magnetic field of the room, 0.5 µT, is 10 times that of the other 5 sessions, 0.05 µT in the middle; mG are smaller by 10.',
  ],
  [
    { code: 'field-in-smaller-unit', ...MILLIGAUSS, field: 'magnetic', panel: 'off', value: 5, most: 0.4 },
    'A magnetic field with the panel off of 5 µT is odd: more than 0.4 µT is rarely met. 5 µT is 50 mG; if the meter said 5 mG, write `5 mG`.',
  ],
  [
    { code: 'field-in-smaller-unit', ...MICROWATTS, field: 'radio', panel: 'off', value: 15, most: 10 },
    'A radio field with the panel off of 15 mW/m² is odd: more than 10 mW/m² is rarely met. 15 mW/m² is 15000 µW/m²; if the meter said 15 µW/m², write `15 uW/m2`.',
  ],
  [
    {
      code: 'field-in-smaller-unit',
      ...{ unit: 'V/m', smaller: 'mV/m', typed: 'mV/m', factor: 1000, field: 'electric', panel: 'on' },
      ...{ value: 1800, most: 1000 },
    },
    'An electric field with the panel on of 1800 V/m is odd: more than 1000 V/m is rarely met. 1800 V/m is 1800000 mV/m; if the meter said 1800 mV/m, write `1800 mV/m`.',
  ],
  [
    { code: 'warm-up-short', warmUp: 20, shortest: 300 },
    'The panel was on for 20 s before the first reading; under 5 min it has not settled, and gives more light than later.',
  ],
  [
    { code: 'write-a-bound', lowest: 0.1 },
    'write `<0.1` with its unit, or look at the unit and at the meter’s range again',
  ],
  [{ code: 'look-at-unit-and-range' }, 'look at the unit and at the meter’s range again'],
  [{ code: 'inches-for-centimetres', value: 6 }, 'a bare number is in centimetres: if inches were meant, write `6 in`'],
  [
    { code: 'other-unit-for-centimetres', width: 203.4567, unit: 'mm' },
    'a bare number is in centimetres: if it was read in millimetres, write `203.457 mm`',
  ],
  [
    { code: 'percent-for-fraction', percent: 14, lowest: 0.5 },
    'the field is in percent: if a fraction was typed, write `14 %`; if the display showed nothing, write `<0.5 %`',
  ],
  [
    { code: 'name-instruments', kinds: ['irradiance', 'mains'] },
    'name each under `instruments`: irradiance: …, mains: …',
  ],
  [
    { code: 'smaller-unit-meant', ...MICROWATTS, value: 5 },
    'a bare number is in mW/m²: if the meter said 5 uW/m2, write `5 uW/m2`, and look at the reading with the panel on',
  ],
  [{ code: 'minutes-for-seconds', value: 20 }, 'a bare number is in seconds: if minutes were meant, write `20 min`'],
  [
    { code: 'peak-below-grid-point', peak: 50.4, highest: 52.8, percent: 4.76 },
    'The peak, 50.4 mW/cm², is no peak: a point of the grid reads 52.8 mW/cm², 4.8 % more. The sweep missed the brightest place, or a reading was mistyped.',
  ],
  [
    { code: 'draws-not-adding-up', sum: 106.7, combined: 1042, percent: 876.6 },
    'Both channels together draw 1040 W, 877 % more than the 107 W of red and near-infrared alone, added up. A reading was mistyped, or the panel holds back when one channel is on alone.',
  ],
  [
    { code: 'draw-below-channel', combined: 10.4, mode: 'red', alone: 52.8 },
    'With both channels on the draw is 10.4 W, below 52.8 W with red alone. The panel may limit its power with both on; otherwise a reading was mistyped.',
  ],
  [
    { code: 'standby-above-draw', standby: 70, on: 52.8 },
    'In standby the panel draws 70 W, no less than the 52.8 W that it draws with its LEDs on. The two were mixed up, or one was mistyped.',
  ],
  [
    { code: 'channel-not-alone', mode: 'red', other: 'near-infrared', percent: 45.2 },
    'In the spectrum of red alone 45.2 % of the light is near-infrared. It is the file of another mode, or both channels were on.',
  ],
  [
    {
      code: 'field-turned-in-housing',
      field: { width: 27.9, height: 17.8 },
      housing: { width: 20.5, height: 31 },
    },
    'The LED field, 27.9 × 17.8 cm, fits into the housing, 20.5 × 31 cm, only when turned: width and height of one of the two stand the other way round.',
  ],
  [
    { code: 'channel-out-of-band', channel: 'near-infrared', peak: 660, edge: 700 },
    'The near-infrared channel peaks at 660 nm; red ends, and near-infrared begins, about 700 nm.',
  ],
  [{ code: 'channels-swapped' }, 'red and near-infrared stand the wrong way round'],
  [
    { code: 'on-below-off', of: 'electric', on: 4, off: 37, unit: 'V/m' },
    'The electric field with the panel on, 4 V/m, is less than with it off, 37 V/m.',
  ],
  [
    { code: 'on-below-off', of: 'sound', on: 32.1, off: 44, unit: 'dB(A)' },
    'The sound with the panel on, 32.1 dB(A), is less than with it off, 44 dB(A).',
  ],
  [{ code: 'on-and-off-swapped' }, 'are the two the wrong way round, or was something else on in the room?'],
  [{ code: 'width-before-height' }, 'give both as the panel stands on the bench, the width across'],
];

test('what a check finds is said with its numbers', () => {
  for (const [statement, sentence] of SENTENCES) expect(say(statement)).toBe(sentence);
});

test('every finding and every hint is looked at here', () => {
  const codes = new Set(SENTENCES.map(([{ code }]) => code));
  expect([...codes].toSorted()).toEqual([...Object.keys(FINDING_WORDS), ...Object.keys(HINT_WORDS)].toSorted());
});
