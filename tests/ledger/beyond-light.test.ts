import { describe, expect, test } from 'vitest';
import { beyondReadings } from '../../src/content/schema/beyond.ts';
import { beyondLight } from '../../src/ledger/beyond-light.ts';

const light = (...places: object[]) =>
  beyondLight(beyondReadings.parse(places.map((it) => ({ edge: 'right', past: 8, on: 5, ...it }))));

describe('readings past the edges, as the model takes them', () => {
  test('are edge, centimetres, accepted repeats and the room’s light', () => {
    const struck = { value: 9, struck: 'The sensor slipped.' };
    expect(light({ past: '0.2 m', on: [5, struck, '52 W/m2'], off: 0.1 })).toEqual([
      { edge: 'right', past: 20, on: [5, 5.2], off: 0.1 },
    ]);
  });

  test('leave out a place whose readings were all rejected', () => {
    expect(light({ on: { value: 9, struck: 'The sensor slipped.' } }, { past: 20 })).toEqual([
      { edge: 'right', past: 20, on: [5] },
    ]);
  });

  test('say that a reading is a bound; a rejected one does not make it one', () => {
    expect(light({ on: ['<0.1', '<0.1'] })).toEqual([{ edge: 'right', past: 8, on: [0.1, 0.1], isBound: true }]);
    expect(light({ on: [0.2, { value: '<0.1', struck: 'Not warm yet.' }] })).toEqual([
      { edge: 'right', past: 8, on: [0.2] },
    ]);
  });

  test('take the room’s light from the farthest place past the same edge where a place has none of its own', () => {
    const offs = light({ past: 8 }, { past: 40, off: 0.1 }, { past: 20, off: 0.3 }, { edge: 'top', past: 8 }).map(
      ({ edge, past, off }) => [edge, past, off],
    );
    expect(offs).toEqual([
      ['right', 8, 0.1],
      ['right', 40, 0.1],
      ['right', 20, 0.3],
      ['top', 8, undefined],
    ]);
  });

  test('take half of the first step away where the display stayed under it', () => {
    expect(light({ off: '<0.1' })).toEqual([{ edge: 'right', past: 8, on: [5], off: 0.05 }]);
    expect(light({ off: 0 })).toEqual([{ edge: 'right', past: 8, on: [5], off: 0 }]);
  });
});
