/** The check standard on the built pages: its chart, and the doubt that leads to it. */
import { describe, expect, test } from 'vitest';
import { FILES, pageAt, textOf } from './site.ts';

const INSTRUMENTS = pageAt('/instruments/').document;

describe('under its meter', () => {
  const section = INSTRUMENTS.querySelector('.standard');

  test('stands whether it held, before its chart', () => {
    expect(textOf(section?.querySelector('.answer') ?? null)).toMatch(
      /^Held within its limits on 34 of 35 days; drift −0\.4 ± 0\.6 % a year since 16 Sep 2025, which may be none\.$/,
    );
    const names = section?.childElements.map((it) => it.tagName) ?? [];
    expect(names.indexOf('p')).toBeLessThan(names.indexOf('figure'));
  });

  test('is a chart for wide windows and one for phones, both in words too', () => {
    const charts = section?.querySelectorAll('svg') ?? [];
    expect(charts.map((it) => it.getAttributeValue('class'))).toEqual(['control-wide', 'control-narrow']);
    for (const it of charts) {
      expect(it.getAttributeValue('aria-label')).toMatch(
        /^Bench lamp: 35 readings .* beyond the limits on 21 Oct 2025/,
      );
    }
  });

  test('is every reading in a table, folded', () => {
    expect(section?.querySelectorAll('details tbody tr')).toHaveLength(35);
  });
});

test('the calculation of the session in doubt says it once, and leads to the chart', () => {
  const { document } = pageAt('/panels/kelpwright-cormorant/methodology/');
  const flags = document.querySelector('#flags-2025-10-21');
  expect(textOf(flags)).toMatch(/^† Doubt\. The bench thermopile read 43 mW\/cm² from the bench lamp on the day/);
  expect(flags?.querySelector('a')?.getAttributeValue('href')).toBe('/instruments/#standard-bench-lamp');
  expect(textOf(document.querySelector('#optical-power-2025-10-21'))).toMatch(/76 ± 4 W † /);
  expect(textOf(document.querySelector('#uniformity-min-mean-2025-10-21'))).not.toMatch(/†/);
});

test('the page of its panel says it under the sessions, where the change since then is marked', () => {
  const { document } = pageAt('/panels/kelpwright-cormorant/');
  const marks = document.querySelectorAll('table.sessions a.dagger').map((it) => it.getAttributeValue('href'));
  expect(marks).toContain('#flags-2025-10-21');
  const flags = document.querySelector('#flags-2025-10-21');
  expect(textOf(flags)).toMatch(/^† Doubt\. The bench thermopile read 43/);
  expect(flags?.querySelector('a')?.getAttributeValue('href')).toBe('/instruments/#standard-bench-lamp');
});

test('the newest session of that panel is in no doubt', () => {
  expect(textOf(pageAt('/panels/kelpwright-cormorant/').document.querySelector('#flags'))).toBe('');
});

test('its readings are a data file', () => {
  expect(FILES).toContain('/data/standards.csv');
});
