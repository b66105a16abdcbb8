import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  lengthHint,
  readDay,
  readGrid,
  readSheet,
  sheetAddress,
  sheetGrid,
  usualSetup,
} from '../../../../src/site/bench/browser/sheet-setup.ts';

const slugOf = (name: string) => (['a-panel', 'the-panel'].includes(name) ? 'a-panel' : undefined);
const cm = (value: number) => ({ cm: value, written: `${value} cm` });

test('a length that can’t be used is told of where it can be', () => {
  expect(lengthHint('7.5 kg', 2, 400)).toBe('"kg" is a unit of a mass, not of a length');
  expect(lengthHint('7.5 in', 2, 400)).toBeUndefined();
});

describe('the address', () => {
  test('of a field with another grid comes back as it was read', () => {
    const query = '?panel=a-panel&width=20+cm&height=60+cm&grid=3x5&inset=1+1%2F2+in&date=2026-11-26';
    const { setup, said } = readSheet(query, slugOf);
    expect(said).toBe('');
    expect(setup).toMatchObject({ panel: 'a-panel', width: cm(20), height: cm(60), columns: 3, rows: 5 });
    expect(setup.inset?.cm).toBeCloseTo(3.81, 10);
    expect(sheetAddress(setup)).toBe(`/bench/sheet/${query}`);
  });

  test('takes decimals after a comma, as number pads of many countries give them', () => {
    expect(readSheet('?width=20,5 cm&height=7,5', slugOf).setup).toMatchObject({ width: cm(20.5), height: cm(7.5) });
    expect(readSheet('?width=1,234 cm', slugOf).setup.width).toBeUndefined();
  });

  test('takes a panel by the name that it had before', () => {
    expect(readSheet('?panel=the-panel', slugOf).setup.panel).toBe('a-panel');
  });

  test('names what it can’t use, and leaves the rest as it was', () => {
    const { setup, said } = readSheet('?panel=other&width=20 W&grid=3x99&rows=3', slugOf);
    expect(setup).toEqual(usualSetup());
    expect(said).toBe('Left aside from the address: “panel=other”, “width=20 W”, “grid=3x99”.');
  });

  test('never throws, and what it writes is read as the same', () => {
    const name = fc.constantFrom('panel', 'width', 'height', 'grid', 'inset', 'date', 'x');
    const value = fc.oneof(
      fc.string(),
      fc.constantFrom('a-panel', '5', '8 in', '60x200', '4x10', '2026-02-30', '2026-02-28'),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(name, value), { maxLength: 6 }), (pairs) => {
        const { setup } = readSheet(`?${new URLSearchParams(pairs)}`, slugOf);
        const again = readSheet(sheetAddress(setup).replace('/bench/sheet/', ''), slugOf);
        expect(again).toEqual({ setup, said: '' });
      }),
    );
  });

  test.each(['2026-02-30', '26-11-2026', '2026-11-26T00:00', ''])('“%s” is no day', (text) => {
    expect(readDay(text)).toBeUndefined();
  });

  test.each(['0x3', '3', '8x8', '13x1', '3x3x3', '-3x3'])('“%s” is no grid', (text) => {
    expect(readGrid(text)).toBeUndefined();
  });
});

describe('the inset', () => {
  const field = (width: number, height: number) => ({ ...usualSetup(), width: cm(width), height: cm(height) });

  test('is 1 in, and less where that would crowd the points', () => {
    expect(sheetGrid(field(20, 60), undefined)).toMatchObject({ inset: { written: '1 in' }, isInsetSmaller: false });
    expect(sheetGrid(field(5, 5), undefined)).toMatchObject({ inset: cm(0.8), isInsetSmaller: true, fault: false });
    expect(sheetGrid(field(5.5, 60), undefined)).toMatchObject({ inset: cm(0.9), isInsetSmaller: true });
  });

  test('that was asked for stays, and is told where it leaves no room', () => {
    const asked = { ...field(5, 60), inset: cm(3) };
    expect(sheetGrid(asked, undefined)).toMatchObject({ inset: cm(3), isInsetSmaller: false, fault: true });
  });

  test('a side that was written comes before the panel’s', () => {
    const panel = { name: 'A', width: cm(30), height: cm(40) };
    expect(sheetGrid({ ...usualSetup(), width: cm(20) }, panel).field).toEqual({ width: cm(20), height: cm(40) });
  });
});
