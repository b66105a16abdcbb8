import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { guideSchema } from '../../../src/content/schema/guide.ts';
import { keysAt, meaningAt } from '../../../src/content/schema/inspect.ts';
import { INSTRUMENT_KINDS, instrumentSchema } from '../../../src/content/schema/instrument.ts';
import { panelSchema } from '../../../src/content/schema/panel.ts';

describe('keysAt', () => {
  test('the top of a file', () => {
    expect(keysAt(panelSchema, [])).toEqual([
      'maker',
      'model',
      'status',
      'statusReason',
      'statusDate',
      'formerly',
      'verdict',
      'obtained',
      'claims',
      'prices',
      'field',
      'leds',
      'emitters',
      'housing',
      'weight',
      'photos',
      'sessions',
    ]);
  });

  test.each([
    ['field', ['field'], ['width', 'height']],
    ['an optional block', ['claims', 'irradiance'], ['value', 'distance']],
    ['an item of a list', ['claims', 'wavelengths', 7], ['peak', 'share']],
    ['a block with a default', ['prices', 0, 'discountCode'], ['needed', 'testerEarns']],
    ['a mode', ['sessions', 2, 'peak'], ['red', 'nearInfrared', 'combined']],
    ['a point of the grid', ['sessions', 0, 'grid', 'rows', 0, 0], ['value', 'struck']],
    ['one of several readings of a point', ['sessions', 0, 'grid', 'rows', 0, 0, 1], ['value', 'struck']],
  ] as Array<[string, PropertyKey[], string[]]>)('%s', (_name, path, keys) => {
    expect(keysAt(panelSchema, path)).toEqual(keys);
  });

  test('instruments of a session are named after what they measure', () => {
    expect(keysAt(panelSchema, ['sessions', 0, 'instruments'])).toEqual([...INSTRUMENT_KINDS]);
  });

  test('a schema that is refined as a whole', () => {
    expect(keysAt(instrumentSchema, ['range'])).toEqual(['from', 'to']);
    expect(keysAt(instrumentSchema, [])).toContain('calibrations');
  });

  test('the keys of all alternatives of a union, each once', () => {
    const union = z.union([z.strictObject({ a: z.string(), b: z.string() }), z.strictObject({ b: z.string() })]);
    expect(keysAt(union, [])).toEqual(['a', 'b']);
  });

  test('through what a preprocessing step hands on', () => {
    expect(
      keysAt(
        z.preprocess((it) => it, z.strictObject({ a: z.string() })),
        [],
      ),
    ).toEqual(['a']);
  });

  test.each([
    ['a text', ['maker']],
    ['a quantity', ['weight']],
    ['a field that is not there', ['nowhere']],
    ['below a field that is not there', ['nowhere', 'at', 'all']],
    ['a position in what is no list', ['field', 0]],
    ['a name in what is a list', ['prices', 'first']],
    ['constructor', ['constructor']],
    ['__proto__', ['__proto__']],
    ['toString of a block', ['field', 'toString']],
    ['below hasOwnProperty', ['hasOwnProperty', 'call']],
  ] as Array<[string, PropertyKey[]]>)('%s has none', (_name, path) => {
    expect(keysAt(panelSchema, path)).toEqual([]);
  });
});

describe('meaningAt', () => {
  test.each([
    [['maker'], 'A file name in content/makers without its ending.'],
    [['field', 'width'], 'Width.'],
    [['sessions', 3, 'date'], 'Day of the session; one session a day.'],
    [['sessions', 3, 'peak', 'red'], 'Highest steady reading of a sweep with red alone on.'],
    [['sessions', 3, 'grid', 'rows', 0, 0, 'struck'], 'Why it does not count.'],
    [['sessions', 3, 'grid', 'rows', 0, 0, 1, 'struck'], 'Why it does not count.'],
    [['prices', 0, 'paidLink'], 'The tester earns when a reader buys through the link.'],
  ] as Array<[PropertyKey[], string]>)('%j', (path, meaning) => {
    expect(meaningAt(panelSchema, path)).toBe(meaning);
  });

  test('a field whose description lies behind a default or a transformation', () => {
    expect(meaningAt(guideSchema, ['rates'])).toBe('Exchange rates for prices in other currencies, one a currency.');
    expect(meaningAt(guideSchema, ['referenceDistance'])).toContain('Distance at which panels are compared');
    expect(meaningAt(guideSchema, ['tariff', 'date'])).toBe('Day of the tariff.');
  });

  test.each([
    [[]],
    [['nowhere']],
    [['nowhere', 'at', 'all']],
    [['prices', 0]],
    [['constructor']],
    [['__proto__']],
    [['field', 'toString']],
    [['toString', 'call']],
  ] as Array<[PropertyKey[]]>)('%j has none', (path) => {
    expect(meaningAt(panelSchema, path)).toBeUndefined();
  });
});
