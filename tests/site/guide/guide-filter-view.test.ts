import { describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import type { PanelEntry } from '../../../src/ledger/ledger.ts';
import { rangeFilters } from '../../../src/measure/metrics.ts';
import { decodeRow } from '../../../src/site/guide/browser/row-data.ts';
import { rowDataOf } from '../../../src/site/guide/guide-filter-view.ts';
import { TODAY, tinyContent } from '../../support/content-folder.ts';

/** Names of the filters that take numbers, as the page hands them to the script. */
const RANGES = rangeFilters().map((it) => it.filter.key);

/** What the filter reads of the tiny content's panel with other readings of flicker. */
function flickerOf(readings: string): string | undefined {
  const content = tinyContent();
  try {
    content.edit('panels/plover/index.md', 'combined: { frequency: 65 kHz, percent: 0.7 }', readings);
    const panel = buildLedger(content.content(), { today: TODAY }).panels.get('plover') as PanelEntry;
    return decodeRow(rowDataOf(panel, RANGES), RANGES).flicker;
  } finally {
    content.delete();
  }
}

describe('flicker, for the filter', () => {
  // At 100 Hz the line of no observable effect lies at 3.33 %, and the meter is not named: the reading itself counts.
  test.each([
    ['combined: { frequency: 65 kHz, percent: 0.7 }', 'faster'],
    ['combined: { frequency: 3 kHz, percent: 0.7 }', 'steady'],
    ['combined: { frequency: 3001 Hz, percent: 0.7 }', 'faster'],
    ['combined: { frequency: 100 Hz, percent: <1 % }', 'steady'],
    ['combined: { frequency: 100 Hz, percent: 12 }', 'above'],
    ['combined: { percent: <0.5 % }', undefined],
    ['combined: { percent: 0 }', undefined],
    ['red: { frequency: 65 kHz, percent: 0.7 }', undefined],
    ['combined: { frequency: 65 kHz, percent: 0.7 }\n      red: { percent: <0.5 % }', undefined],
    ['combined: { frequency: 65 kHz, percent: 0.7 }\n      red: { frequency: 100 Hz, percent: 1 }', 'steady'],
    ['combined: { frequency: 65 kHz, percent: 0.7 }\n      red: { frequency: 100 Hz, percent: 30 }', 'above'],
    // Near-infrared alone is not seen, and has no line.
    ['combined: { frequency: 65 kHz, percent: 0.7 }\n      nearInfrared: { percent: 60 }', 'faster'],
  ])('%s', (readings, wanted) => {
    expect(flickerOf(readings)).toBe(wanted);
  });
});
