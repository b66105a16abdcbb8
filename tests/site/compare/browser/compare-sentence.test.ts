import { describe, expect, test } from 'vitest';
import { type FigureOrGap, gap } from '../../../../src/measure/figure.ts';
import { verbatim } from '../../../../src/measure/statement.ts';
import {
  bodyWords,
  headingOf,
  shortNames,
  tallyWords,
  unlikeReasons,
} from '../../../../src/site/compare/browser/compare-sentence.ts';
import type { ComparedContender } from '../../../../src/site/compare/browser/compare-words.ts';
import type { ComparedPanel } from '../../../../src/site/compare/browser/compared-panel.ts';
import type { Piece } from '../../../../src/site/shared/browser/pieces.ts';
import { figure, line } from '../../../measure/make.ts';
import { contender } from './make-contender.ts';

/** A panel by its light and its price, each watt with 2 % of its own: 8 % apart is a difference, 4 % is a tie. */
function make(
  name: string,
  light: number,
  price: number,
  part: Partial<ComparedPanel> = {},
  more: Record<string, FigureOrGap> = {},
): ComparedContender {
  return contender(
    name,
    {
      'real-price': figure(price, [], 'real-price', 'currency'),
      'optical-power': figure(light, [line(name, 0.02 * light)]),
      'price-per-watt': figure(price / light, [line(name, (-0.02 * price) / light)], 'price-per-watt', 'currency/W'),
      ...more,
    },
    part,
  );
}
const heading = (...contenders: ComparedContender[]) => headingOf(contenders).heading.replaceAll('\u00a0', ' ');
const text = (pieces: readonly Piece[]): string =>
  pieces.map((it) => (typeof it === 'string' ? it : it.attributes.hidden ? '' : text(it.pieces))).join('');

const A = make('A', 100, 200);

describe('two panels', () => {
  test('both differences', () => {
    expect(heading(A, make('B', 125, 300))).toBe(
      'The B gives 18 to 32 % more light, and each watt of it costs 14 to 27 % more.',
    );
    expect(heading(A, make('B', 250, 200))).toBe(
      'The B gives 2.37 to 2.64 times as much light, and each watt of it costs 58 to 62 % less.',
    );
  });

  test('a tie by either, or by both', () => {
    expect(heading(A, make('B', 125, 252))).toBe(
      'The B gives 18 to 32 % more light; the readings can’t tell whose watt costs less.',
    );
    expect(heading(A, make('B', 102, 300))).toBe(
      'Each watt of the B’s light costs 39 to 55 % more; the readings can’t tell which gives more light.',
    );
    expect(heading(A, make('B', 102, 204))).toBe(
      'The readings can’t tell which gives more light, the B or the A, nor whose watt costs less.',
    );
  });

  test('no price', () => {
    const none = {
      'price-per-watt': gap('price-per-watt', verbatim('no price')),
      'real-price': gap('real-price', verbatim('no price')),
    };
    expect(heading(A, make('B', 125, 1, {}, none))).toBe('The B gives 18 to 32 % more light.');
  });

  test('not read alike: by all the light where that is known, and else not at all', () => {
    const far = { conditions: { distance: 30, methodVersion: 1, isReference: false } };
    const all = (name: string, watts: number) => ({
      'emitted-power': figure(watts, [line(name, 0.02 * watts)], 'emitted-power'),
      'price-per-emitted-watt': figure(2, [line(name, 0.04)], 'price-per-emitted-watt', 'currency/W'),
    });
    expect(heading(make('A', 100, 200, {}, all('A', 150)), make('B', 60, 200, far, all('B', 120)))).toBe(
      'Counting all that leaves the LEDs, the B gives 15 to 24 % less light, and each watt of it costs 18 to 32 % more.',
    );
    const other = make('B', 60, 200, far);
    expect(heading(A, other)).toBe('The light of the B and of the A was not read alike.');
    expect(unlikeReasons(other, A)).toEqual(['it was read at 30 cm, A at 15.24 cm']);
    expect(tallyWords(other, A, {})).toBeUndefined();
  });

  test('a gap', () => {
    expect(heading(A, make('B', 1, 1, {}, { 'optical-power': gap('optical-power', verbatim('not measured')) }))).toBe(
      'How the light of the B lies to that of the A is not known.',
    );
  });

  test('what is in doubt is told', () => {
    const doubted = make('B', 125, 300, {
      marks: { 'price-per-watt': { mark: '†', label: 'in doubt, see the flags' } },
    });
    expect(headingOf([A, doubted]).doubted).toEqual([doubted]);
    expect(headingOf([A, make('B', 125, 300)]).doubted).toEqual([]);
  });

  test('size and price, in both units', () => {
    const sides = (width: number, height: number) => ({
      'field-width': figure(width, [line('tape', 0.05)], 'field-width', 'cm'),
      'field-height': figure(height, [line('tape', 0.05)], 'field-height', 'cm'),
    });
    const sized = (name: string, price: number, width: number, height: number) =>
      make(name, 100, price, { field: { width, height } }, sides(width, height));
    const first = sized('A', 849, 36, 120);
    expect(text(bodyWords(sized('B', 1190, 40, 150), first))).toBe('is 30\u00a0cm taller and costs €341 more');
    expect(text(bodyWords(sized('B', 779.5, 40, 120), first))).toBe('is 4\u00a0cm wider and costs €69.50 less');
    expect(text(bodyWords(make('B', 100, 849), first))).toBe('costs as much');
  });

  test('which differences the readings can tell', () => {
    const words = {
      'optical-power': { name: 'light', method: '' },
      'price-per-watt': { name: 'a watt of light', method: '' },
    };
    expect(tallyWords(make('B', 125, 300), A, words)).toBe(
      'The readings can tell every difference below that is known.',
    );
    expect(tallyWords(make('B', 125, 252), A, words)).toBe(
      'A watt of light is a tie; the readings can tell every other difference below that is known.',
    );
    expect(tallyWords(make('B', 102, 204), A, words)).toBe(
      'The readings can tell no difference below: light and a watt of light are ties.',
    );
  });
});

describe('three or more', () => {
  test('who gives most, and whose watt costs least', () => {
    expect(heading(A, make('B', 150, 450), make('C', 120, 350))).toBe(
      'The B gives most light, and a watt costs least from the A.',
    );
    expect(heading(A, make('B', 150, 250), make('C', 120, 350))).toBe(
      'The B gives most light, and each watt of it costs least.',
    );
  });

  test('ties', () => {
    expect(heading(A, make('B', 150, 450), make('C', 147, 295))).toBe(
      'Most light is a tie of the B and the C, and the lowest price for a watt is a tie of the A and the C.',
    );
    expect(heading(A, make('B', 150, 255), make('C', 147, 250))).toBe(
      'The B and the C tie for most light and for the lowest price for a watt.',
    );
    expect(heading(A, make('B', 101, 202), make('C', 102, 204))).toBe(
      'The readings can’t tell which gives most light, nor whose watt costs least.',
    );
  });

  test('only those that can be held against each other are spoken of', () => {
    const far = { conditions: { distance: 30, methodVersion: 1, isReference: false } };
    expect(heading(A, make('B', 500, 900, far), make('C', 120, 350))).toBe(
      'Of the 2 that can be compared, the C gives most light, and a watt costs least from the A.',
    );
    expect(heading(make('A', 100, 200, far), make('B', 500, 900), make('C', 120, 350))).toContain('Of the 2');
  });

  test('none that can be', () => {
    const none = { 'optical-power': gap('optical-power', verbatim('not measured')) };
    expect(heading(A, make('B', 1, 1, {}, none), make('C', 1, 1, {}, none))).toBe(
      'No two of these 3 panels can be compared by their light.',
    );
  });
});

test('a model that two makers have is called by its maker too', () => {
  const [tern, other, knot] = [
    make('Plover Tern', 1, 1, { model: 'Tern' }),
    make('Dunlin Tern', 1, 1, { model: 'Tern' }),
    make('Dunlin Knot', 1, 1, { model: 'Knot' }),
  ];
  expect([...shortNames([tern, other, knot]).values()]).toEqual(['Plover Tern', 'Dunlin Tern', 'Knot']);
});
