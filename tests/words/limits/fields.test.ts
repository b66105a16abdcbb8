import { describe, expect, test } from 'vitest';
import type { FieldReading } from '../../../src/measure/exposure/field-reading.ts';
import { fieldResults } from '../../../src/measure/exposure/field-results.ts';
import { gap } from '../../../src/measure/figure.ts';
import { limitWords } from '../../../src/words/limits/index.ts';
import { say } from '../../../src/words/say.ts';
import { figureOf, vague } from '../../measure/make.ts';
import { electric, magnetic, radio, resultOf, shownFrequency } from '../../support/exposure-readings.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

const strictOf = (reading: FieldReading) => resultOf(fieldResults('p/d', reading, 50), `${reading.kind}-field-share`);
const mildOf = (reading: FieldReading) =>
  resultOf(fieldResults('p/d', reading, 50), `${reading.kind}-field-share-at-mains`);

describe('fields without a frequency', () => {
  test('the strict end comes first, and one sentence says both', () => {
    const [strict, mild] = [strictOf(electric(40)), mildOf(electric(40))];
    expect(limitWords(strict).outcome).toEqual(limitWords(mild).outcome);
    expect(sentenceOf(strict)).toContain(
      'If all of it lies above 3 kHz, as from a driver, the reading with the panel on, the room’s own field included, is 48.2 % of the level, 83 V/m, at the cautious end of the interval 50.6 %; if all of it is at the mains’ 50 Hz, it is 0.8 % of the level, 5000 V/m, at the cautious end of the interval 0.84 %.',
    );
    expect(sentenceOf(strict)).toContain('which can come to more than either end');
  });

  test('are told apart by what stands beside their figures', () => {
    expect(limitWords(strictOf(magnetic()))).toMatchObject({
      subject: 'Magnetic field',
      aspect: 'share of the reference level',
      label: 'share of the level above 3 kHz, or at the frequency read',
    });
    const aspect = 'share of the level at the mains’ frequency';
    expect(limitWords(mildOf(magnetic()))).toMatchObject({ subject: 'Magnetic field', aspect, label: aspect });
  });

  test('what the meter can’t see is in no share, and that is said', () => {
    expect(sentenceOf(strictOf(magnetic({ response: 'One coil, 30 Hz to 400 Hz.' })))).toContain(
      'What the meter can’t see is in no share: its file says “One coil, 30 Hz to 400 Hz”.',
    );
    expect(sentenceOf(strictOf(magnetic()))).toContain('in no share: what it responds to is not recorded.');
  });

  test('bounds stay bounds at both ends', () => {
    const on = { ...vague(0.1, 'the reading is a bound'), unit: 'µT' as const, bound: 'below' as const };
    const sentence = sentenceOf(strictOf(magnetic({ on })));
    expect(sentence).toContain('was below 0.1 µT (below 1 mG)');
    expect(sentence).toContain('is below 0.37 % of the level, 27 µT');
    expect(sentence).toContain('it is below 0.05 % of the level, 200 µT');
  });

  test('the sentence has both readings, the distance, the level and the implants', () => {
    const sentence = sentenceOf(strictOf(magnetic()));
    expect(sentence).toContain('0.31 µT (3.1 mG); with it off, 0.05 µT; read at 15 cm.');
    expect(sentence).toContain('0.155 % of the level, 200 µT, at the cautious end of the interval 0.175 %');
    expect(sentence).toContain('ICNIRP, 2010, Health Physics 99(6):818–836 (seen on a page that quotes it)');
    expect(sentence).toContain('Implants may be disturbed below the level too');
    expect(sentenceOf(strictOf(electric(50)))).toContain(
      'with it off, there is no reading (not measured); the distance is not recorded.',
    );
  });

  test('without a reading there is a reason, and still the level', () => {
    const on = gap('magnetic-field-on', { code: 'not-measured-panel-on' });
    const sentence = sentenceOf(strictOf(magnetic({ on })));
    expect(sentence).toMatch(/ can be given for the magnetic field: not measured with the panel on\. The level is /);
  });

  test('each share has a note on what it takes for granted', () => {
    const notes = (reading: FieldReading) =>
      [strictOf(reading), mildOf(reading)].flatMap(({ figure }) => figureOf(figure).notes.map(say));
    expect(notes(magnetic())).toEqual([
      expect.stringMatching(/^holds if all of it lies above 3 kHz, as from a driver; the meter gave no frequency, so /),
      expect.stringMatching(/^holds if all of it is at the mains’ 50 Hz; the meter gave no frequency, so both ends /),
    ]);
  });
});

test.each([
  [50, '50 Hz'],
  [1000, '1 kHz'],
  [65_000, '65 kHz'],
])('a frequency of %s Hz that the meter showed is said', (hertz, words) => {
  const reading = electric(40, { frequency: shownFrequency(hertz) });
  const [strict, mild] = [strictOf(reading), mildOf(reading)];
  expect(sentenceOf(strict)).toContain(`If all of it is at the ${words} that the meter showed, the reading with`);
  expect(sentenceOf(strict)).not.toContain('if all of it is at the mains');
  expect(figureOf(strict.figure).notes.map(say)).toEqual([
    `holds if all of it is at the ${words} that the meter showed; where the meter showed a frequency, all of the reading is taken to be at it`,
  ]);
  expect('reason' in mild.figure && say(mild.figure.reason)).toBe(
    `the meter showed ${words}, and the share is for that one`,
  );
});

test('radio: the lowest level, since the frequency is not known', () => {
  const result = resultOf(fieldResults('p/d', radio(20), 50), 'radio-field-share');
  expect(limitWords(result).label).toBe('share of the reference level');
  expect(sentenceOf(result)).toContain('The radio meter gives no frequency, so ');
  expect(sentenceOf(result)).toContain('Above 2 GHz the share would be a fifth of this one');
  expect(sentenceOf(result)).toContain('(seen in secondary sources only)');
  expect(sentenceOf(result)).not.toContain('What the meter can’t see');
});
