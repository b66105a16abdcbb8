import { beforeAll, expect, test } from 'vitest';
import { publishedFiles } from '../../../src/site/export/published-files.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

test('every panel has a file for the comparison, and no two files share an address', () => {
  const paths = publishedFiles(demo.ledger).map((it) => it.path);
  expect(new Set(paths).size).toBe(paths.length);
  const own = [...demo.ledger.panels.keys()].map((slug) => `data/compare/${slug}.json`);
  expect(own.length).toBeGreaterThan(5);
  expect(paths).toEqual(
    expect.arrayContaining([
      'data/panels.json',
      'data/panels.csv',
      'data/offers.json',
      'data/plan.json',
      'data/compare.json',
      ...own,
    ]),
  );
});

const BEGINNINGS = {
  'text/csv': /^(kind,panel|standard,instrument|correction,date|panel,(session|address|date)|metric,name),/,
  'text/html': /^<!DOCTYPE html>/,
  'text/plain': /^User-agent: \*\n/,
  'application/atom+xml': /^<\?xml version="1.0" encoding="utf-8"\?>\n<feed /,
  'application/xml': /^<\?xml version="1.0" encoding="UTF-8"\?>\n/,
  'text/javascript': /^location\./,
};

test('each is what its type says', () => {
  for (const file of publishedFiles(demo.ledger)) {
    const text = [...file.text()].join('');
    if (file.type === 'application/json') expect(JSON.parse(text), file.path).toBeTypeOf('object');
    else expect(text, file.path).toMatch(BEGINNINGS[file.type]);
  }
});
