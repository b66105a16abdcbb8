/** Panels of the comparison for tests. */
import type { FigureOrGap } from '../../../../src/measure/figure.ts';
import type { ComparedContender } from '../../../../src/site/compare/browser/compare-words.ts';
import { COMPARE_FORMAT, type ComparedPanel } from '../../../../src/site/compare/browser/compared-panel.ts';
import { figureMap } from '../../../measure/make.ts';

export function panel(name: string, part: Partial<ComparedPanel> = {}): ComparedPanel {
  return {
    format: COMPARE_FORMAT,
    slug: name.toLowerCase(),
    name,
    maker: 'Sandpiper',
    model: name,
    status: 'published',
    sizeClass: 'Desk',
    currency: 'EUR',
    asPriced: null,
    priced: '2026-11-02',
    tested: '2026-11-01',
    conditions: { distance: 15.24, methodVersion: 1, isReference: true },
    distances: {
      magnetic: { value: 15.24, written: '6 in' },
      electric: { value: 15.24, written: '6 in' },
      sound: null,
    },
    frequencies: [],
    marks: {},
    field: null,
    housing: null,
    light: { absent: 'for a test' },
    owner: '',
    kinds: [],
    lines: [],
    forms: [],
    terms: [],
    texts: [],
    figures: {},
    ...part,
  };
}

export const contender = (
  name: string,
  figures: Record<string, FigureOrGap>,
  part?: Partial<ComparedPanel>,
): ComparedContender => ({
  panel: panel(name, part),
  figures: figureMap(figures),
});
