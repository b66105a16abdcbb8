import { describe, expect, test } from 'vitest';
import { instrumentNamed } from '../../../src/measure/checks/instrument-named.ts';
import { facts } from './facts.ts';

const use = (kind: string, name: string | undefined, ...metrics: string[]) => ({ kind, name, metrics });

describe('readings', () => {
  test('of light without a meter: a doubt, since the panel is not ranked', () => {
    const [flag] = instrumentNamed.run(
      facts({
        instruments: [
          use('irradiance', undefined, 'peak-irradiance-combined', 'mean-irradiance'),
          use('mains', undefined, 'mains-draw-combined'),
          use('sound', 'sound meter', 'sound-on'),
        ],
      }),
    );
    expect(flag).toMatchObject({
      severity: 'doubt',
      concerns: ['peak-irradiance-combined', 'mean-irradiance', 'mains-draw-combined'],
      at: ['session', 'instruments'],
    });
    expect(flag?.finding).toBe(
      'The session names no meter for irradiance, mains, so that 3 figures have no uncertainty, and the panel is not ranked.',
    );
  });

  test('of something else without one: a note', () => {
    expect(instrumentNamed.run(facts({ instruments: [use('flicker', undefined, 'flicker-combined')] }))).toMatchObject([
      { severity: 'note', text: 'The session names no meter for flicker, so that 1 figure has no uncertainty.' },
    ]);
  });

  test('all with their meters, or none at all, are right', () => {
    expect(instrumentNamed.run(facts({ instruments: [use('mains', 'wattmeter', 'mains-draw-red')] }))).toEqual([]);
    expect(instrumentNamed.run(facts({ instruments: [use('mains', undefined)] }))).toEqual([]);
  });
});
