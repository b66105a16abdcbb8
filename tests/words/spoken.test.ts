import { expect, test } from 'vitest';
import { QUANTITIES } from '../../src/content/schema/units.ts';
import { spokenReading } from '../../src/words/spoken.ts';

test.each([
  ['4.12 mW/cm2', 'four point one two milliwatts per square centimetre'],
  ['41.20 mW/cm²', 'four one point two zero milliwatts per square centimetre'],
  ['1 W', 'one watt'],
  ['1.0 W', 'one point zero watts'],
  ['0.5 W', 'zero point five watts'],
  ['<0.1 µT', 'less than zero point one microtesla'],
  ['> 1999 V/m', 'more than one nine nine nine volts per metre'],
  ['-3 °C', 'minus three degrees Celsius'],
  ['1.2e-3 V/m', 'one point two times ten to the minus three volts per metre'],
  ['1e+4 Hz', 'one times ten to the four hertz'],
  ['7 1/2 in', 'seven and one over two inches'],
  ['6 in', 'six inches'],
  ['12', 'one two'],
  ['12 lux', 'one two lux'],
  ['a slip', 'a slip'],
  ['', ''],
])('%s', (written, said) => {
  expect(spokenReading(written)).toBe(said);
});

test('every unit of the content’s files has words', () => {
  for (const { units } of Object.values(QUANTITIES)) {
    for (const unit of Object.keys(units)) {
      const [one, many] = [spokenReading(`1 ${unit}`), spokenReading(`2 ${unit}`)];
      expect(one).toMatch(/^one [a-z]{3,}( [a-zC-F][a-z]*)*$/);
      expect(many).toMatch(/^two [a-z]{3,}( [a-zC-F][a-z]*)*$/);
    }
  }
});
