import { beforeAll, expect, test } from 'vitest';
import { publishedFiles } from '../../../src/site/export/published-files.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

test('every panel has a file for the comparison and one for the bench, and no two files share an address', () => {
  const paths = publishedFiles(demo, { code: 'test', isTester: false }).map((it) => it.path);
  expect(new Set(paths).size).toBe(paths.length);
  const own = [...demo.ledger.panels.keys()].flatMap((it) => [`data/compare/${it}.json`, `data/bench/${it}.json`]);
  expect(own.length).toBeGreaterThan(5);
  expect(paths).toEqual(
    expect.arrayContaining([
      'data/panels.json',
      'data/panels.csv',
      'data/offers.json',
      'data/plan.json',
      'data/compare.json',
      'data/bench.json',
      ...own,
    ]),
  );
});

const BEGINNINGS = {
  'image/svg+xml': /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" /,
  'text/css': /^:root\{/,
  'text/csv': /^(standard,instrument|correction,date|panel,(session|address|date|maker)|metric,name),/,
  'text/html': /^<!DOCTYPE html>/,
  'text/plain': /^(User-agent: \*|\/\*\n|# Old addresses)/,
  'application/atom+xml': /^<\?xml version="1.0" encoding="utf-8"\?>\n<feed /,
  'application/xml': /^<\?xml version="1.0" encoding="UTF-8"\?>\n/,
  'text/javascript': /^location\./,
};

test('a panel that was renamed has its file under the old name too', () => {
  const files = new Map(publishedFiles(demo, { code: 'test', isTester: false }).map((it) => [it.path, it]));
  const at = (slug: string) => [...(files.get(`data/compare/${slug}.json`)?.text() ?? [])].join('');
  expect(at('ruddlestone-r-60')).toBe(at('ruddlestone-r60'));
  const list = JSON.parse([...(files.get('data/compare.json')?.text() ?? [])].join(''));
  const renamed = list.panels.filter((it: { formerly?: string[] }) => it.formerly);
  expect(renamed).toEqual([expect.objectContaining({ slug: 'ruddlestone-r60', formerly: ['ruddlestone-r-60'] })]);
});

test('each is what its type says', () => {
  for (const file of publishedFiles(demo, { code: 'test', isTester: false })) {
    const text = [...file.text()].join('');
    if (file.type === 'application/json') expect(JSON.parse(text), file.path).toBeTypeOf('object');
    else expect(text, file.path).toMatch(BEGINNINGS[file.type]);
  }
});
