import Validator from '@adobe/structured-data-validator';
import WebAutoExtractor from '@marbec/web-auto-extractor';
import { beforeAll, expect, test } from 'vitest';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { guideDataset, panelData } from '../../../src/site/cite/structured-data.ts';
import { asData } from '../../../src/site/shared/data-block.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

/* That every property is one of schema.org's and of its type is held by the types of `schema-dts`, made of its vocabulary. */

let ledger: Ledger;
beforeAll(() => {
  ledger = demoLedger().ledger;
});

const page = (data: object) => `<html><head><script type="application/ld+json">${asData(data)}</script></head></html>`;

/** What a checker of others has against it, beside what search engines only recommend. */
async function faults(data: object): Promise<string[]> {
  const extracted = new WebAutoExtractor({ addLocation: true }).parse(page(data));
  const issues = await new Validator().validate(extracted);
  return issues
    .filter((it) => it.severity === 'ERROR')
    .map((it) => `${it.path.map(({ type }) => type).join('/')}: ${it.issueMessage}`);
}

test('every panel is a product that a checker takes, but for the rating, which this guide has none of', async () => {
  for (const panel of ledger.panels.values()) {
    const found = await faults(panelData(panel, ledger));
    // A picture is asked for too; not every panel has one.
    const left = found.filter(
      (it) => !/Review: .*"reviewRating"/.test(it) && (panel.photos.length > 0 || !/"image"/.test(it)),
    );
    expect(left, panel.slug).toEqual([]);
  }
});

test('the checker finds what is missing', async () => {
  const [panel] = ledger.panels.values();
  if (!panel) throw new Error('the demonstration has panels');
  const {
    name: _name,
    offers: _offers,
    review: _review,
    ...rest
  } = panelData(panel, ledger) as unknown as Record<string, unknown>;
  expect((await faults(rest)).join('\n')).toMatch(/name/);
});

test('figures stand with the ends of their interval; bounds and what is in doubt are left out', () => {
  const limpet = ledger.panels.get('kelpwright-limpet');
  if (!limpet) throw new Error('the demonstration has a Limpet');
  const { additionalProperty } = panelData(limpet, ledger) as unknown as {
    additionalProperty: Array<{ name: string; value: number; minValue: number; maxValue: number }>;
  };
  const power = additionalProperty.find((it) => it.name === 'Optical power at the reference plane');
  const own = limpet.figures.get('optical-power');
  const digits = (it: number, count: number) => Number(it.toPrecision(count));
  const ends = own && 'value' in own ? (own.interval95 ?? []) : [];
  expect(own && 'value' in own && [digits(own.value, 12), ...ends.map((it) => digits(it, 7))]).toEqual([
    power?.value,
    power?.minValue,
    power?.maxValue,
  ]);
});

test('the dataset names every file of the data page', () => {
  const { distribution, license } = guideDataset(ledger) as unknown as {
    distribution: Array<{ contentUrl: string }>;
    license: string;
  };
  expect(distribution.map((it) => new URL(it.contentUrl).pathname)).toContain('/data/tables/figures.csv');
  expect(license).toBe(ledger.guide.licence?.link);
});

test('no text ends the block that it stands in', () => {
  const text = asData({ name: '</script><script>alert(1)</script><!--' });
  expect(text).not.toContain('<');
  expect(JSON.parse(text)).toEqual({ name: '</script><script>alert(1)</script><!--' });
});
