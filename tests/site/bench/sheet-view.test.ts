import { expect, test } from 'vitest';
import { metersFor } from '../../../src/site/bench/browser/sheet-data.ts';
import { sheetView } from '../../../src/site/bench/sheet-view.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

const { data, meters, standards, without } = sheetView(demoLedger().ledger);

test('every quantity of every meter has a row, and one of each kind stands on the sheet', () => {
  const kinds = [...new Set(meters.map((it) => it.kind))];
  expect(data.usual.map((it) => it.split(':')[0])).toEqual(kinds);
  for (const key of data.usual) expect(meters.map((it) => it.key)).toContain(key);
  expect(meters.find((it) => it.key === 'irradiance:bench-thermopile')?.display).toBe('0.1 to 300 mW/cm², step 0.1');
  expect(without).toEqual(['length', 'temperature']);
});

test('panels bring their field as it was written, and the meters of their newest session', () => {
  const gannet = data.panels['kelpwright-gannet'];
  expect([gannet?.width, gannet?.height]).toEqual([
    { cm: 36, written: '36 cm' },
    { cm: 120, written: '120 cm' },
  ]);
  expect(metersFor(data, 'kelpwright-gannet')).toContain('irradiance:bench-thermopile');
});

test('a panel’s own meter comes before the usual one of its kind', () => {
  const own = {
    panels: { a: { name: 'A', meters: ['magnetic:old-coil'] } },
    usual: ['irradiance:one', 'magnetic:new-coil'],
  };
  expect(metersFor(own, 'a')).toEqual(['magnetic:old-coil', 'irradiance:one']);
  expect(metersFor(own, undefined)).toEqual(own.usual);
});

test('the check standard has where it is read from and its limits', () => {
  expect(standards).toEqual([
    {
      id: 'bench-lamp',
      name: 'Bench lamp',
      how: 'read with bench-thermopile from 20 cm',
      limits: '40.94 to 42.33 mW/cm²',
    },
  ]);
});
