import { describe, expect, test } from 'vitest';
import { controlChart } from '../../src/measure/control/control-chart.ts';
import {
  chartDescription,
  dayWords,
  driftCaveats,
  driftWords,
  heldWords,
  limitWordsOf,
  runWords,
} from '../../src/words/standard-words.ts';

const monthly = (values: readonly number[]) =>
  values.map((value, i) => ({
    date: new Date(Date.UTC(2025, i, 2)).toISOString().slice(0, 10),
    values: [value],
  }));
const chart = (values: readonly number[], restarts: string[] = []) =>
  controlChart(monthly(values), { limitsFrom: 5, restarts: restarts.map((date) => ({ date, reason: 'adjusted' })) });
const last = <T>(all: readonly T[]) => all.at(-1) as T;

const FLAT = [41, 41.4, 40.9, 41.2, 41.5, 41.1, 41.3];
const LIGHT = { unit: 'mW/cm²', isRelative: true };

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('whether it held', () => {
  test.each([
    [chart(FLAT), 'Held within its limits on all 7 days'],
    [chart([...FLAT, 44]), 'Held within its limits on 7 of 8 days'],
    [chart([41]), 'Read on 1 day so far; 4 more set the limits'],
    [chart([41, 41, 41, 41]), 'Read on 4 days so far; 1 more sets the limits'],
    [
      chart([...FLAT, 44, 45], ['2025-08-01']),
      'Held within its limits on all 7 days; read on 2 days since the limits were restarted; 3 more set the limits',
    ],
  ])('%#', (stages, words) => {
    expect(heldWords(stages)).toBe(words);
  });
});

describe('the drift', () => {
  test('is told with its interval, in % or in the unit', () => {
    const it = last(chart(FLAT));
    expect(plain(driftWords(it, LIGHT, false))).toBe('drift 1.0 ± 3.2 % a year, which may be none');
    expect(plain(driftWords(it, { unit: 'dB(A)', isRelative: false }, true))).toBe(
      'drift 0.4 ± 1.3 dB(A) a year since 2 Jan 2025, which may be none',
    );
  });

  test('that is one says what it may be, and how far it will have gone', () => {
    const it = last(chart([41, 40.8, 40.5, 40.4, 40.1, 39.9]));
    expect(plain(driftWords(it, LIGHT, false))).toMatch(
      /^drift −6\.\d ± \d\.\d+ % a year, more than chance would make$/,
    );
    expect(driftCaveats(it, '2026-03-01')).toEqual([
      'The standard or the meter goes that way; the chart can’t tell which of the two.',
      'At that rate it has gone as far as the calibration’s own uncertainty by 1 Mar 2026.',
    ]);
  });

  test('of few readings is none', () => {
    expect(driftWords(last(chart([41, 42])), LIGHT, false)).toBe('too few readings yet for a drift');
    expect(driftCaveats(last(chart([41, 42])), undefined)).toEqual([]);
  });

  test('of readings like their neighbours is less sure', () => {
    const waves = last(chart(Array.from({ length: 30 }, (_, i) => 41 + Math.sin(i / 4))));
    expect(driftCaveats(waves, undefined).join(' ')).toContain('Readings resemble those before them');
  });
});

test('the limits, what set them, and what a day’s scatter is', () => {
  expect(limitWordsOf(last(chart(FLAT)), LIGHT, { first: 5, expectedSigma: 0.19 })).toBe(
    'Limits: 40.20 to 42.20 mW/cm², from its first 5 days. From day to day it scatters by 0.81 % (one standard deviation); the meter’s own repeatability would make 0.46 % of it.',
  );
  expect(
    limitWordsOf(last(chart(FLAT)), { unit: '°C', isRelative: false }, { first: 5, expectedSigma: undefined }),
  ).toMatch(/scatters by 0\.33 °C \(one standard deviation\)\.$/);
  expect(limitWordsOf(last(chart([41])), LIGHT, { first: 5, expectedSigma: 1 })).toBeUndefined();
});

test('a run that has not ended', () => {
  expect(runWords(last(chart(FLAT)))).toBeUndefined();
  expect(runWords(last(chart([...FLAT, ...Array(9).fill(41.8)])))).toBe(
    'The last 10 days all lie above the centre line: within the limits, and yet a shift.',
  );
});

test('what there is to say of a day', () => {
  const it = last(chart([...FLAT, 44]));
  expect(it.points.map((point) => dayWords(point, it).join('; '))).toEqual([
    ...Array(5).fill('sets the limits'),
    '',
    '',
    'beyond the upper limit; a large step',
  ]);
});

test('all of it, for who can’t see the drawing', () => {
  expect(chartDescription('Lamp', chart([...FLAT, 44, 44, 44.1, 43.9, 44, 43.8], ['2025-09-01']), 'mW/cm²')).toBe(
    'Lamp: 13 readings from 2 Jan 2025 to 2 Jan 2026 in mW/cm²; beyond the limits on 2 Aug 2025; limits set anew on 1 Sep 2025',
  );
  expect(chartDescription('Lamp', chart([]), 'mW/cm²')).toBe('Lamp: no reading');
});
