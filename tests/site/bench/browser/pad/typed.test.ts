import { describe, expect, test } from 'vitest';
import { readTyped, unitsOf, usualUnit } from '../../../../../src/site/bench/browser/pad/typed.ts';

const light = { quantity: 'irradiance', bounds: false } as const;
const edge = { quantity: 'irradiance', bounds: true } as const;
const time = { quantity: 'time', bounds: false } as const;
const written = (...args: Parameters<typeof readTyped>) => {
  const typed = readTyped(...args);
  return 'written' in typed ? typed.written : typed.fault;
};

describe('what is typed', () => {
  test.each([
    ['41.2', 'mW/cm2', '41.2'],
    [' 41.20 ', 'mW/cm2', '41.20'],
    ['412', 'W/m2', '412 W/m2'],
    ['412 W/m2', 'mW/cm2', '412 W/m2'],
    ['41 mW/cm²', 'W/m2', '41'],
    ['4.1e1', 'mW/cm2', '4.1e1'],
    ['4.1e1', 'W/m2', '4.1e1 W/m2'],
  ])('%s on a meter in %s goes into the file as %s', (text, unit, wanted) => {
    expect(written(text, light, unit)).toBe(wanted);
  });

  test('a decimal comma of a number pad is a point, and three digits after it may be thousands', () => {
    expect(written('41,2', light, 'mW/cm2')).toBe('41.2');
    expect(written('<0,1', edge, 'mW/cm2')).toBe('<0.1');
    expect(written('1,234', light, 'mW/cm2')).toMatch(/^“1,234” is not an irradiance/);
  });

  test('a bound goes where the file takes one, and elsewhere says why not', () => {
    expect(written('<0.1', edge, 'W/m2')).toBe('<0.1 W/m2');
    expect(written('<0.1', light, 'mW/cm2')).toContain('a bound ("<") can\'t be calculated with');
  });

  test('a unit of another quantity is refused with its name', () => {
    expect(written('41 W', light, 'mW/cm2')).toContain('"W" is a unit of a power');
    expect(written('hand', light, 'mW/cm2')).toContain('“hand” is not an irradiance');
  });

  test('minutes are said, since a bare number of a time is in seconds', () => {
    expect(usualUnit(time)).toBe('min');
    expect(written('30', time, 'min')).toBe('30 min');
    expect(written('1800', time, 's')).toBe('1800');
  });
});

test('units of one size stand once, that of the file first', () => {
  expect(unitsOf(light)).toEqual(['mW/cm2', 'W/m2', 'uW/cm2', 'W/cm2']);
  expect(unitsOf({ quantity: 'length' })).toEqual(['cm', 'mm', 'm', 'in', 'ft']);
  expect(unitsOf({ quantity: 'temperature' })).toEqual(['C', 'F']);
});
