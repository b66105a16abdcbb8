import { expect, test } from 'vitest';
import { movedFiles, movedHtml, movedPages, redirectsText } from '../../../src/site/moved/moved-pages.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

const { ledger } = demoLedger();
const GUIDE = { site: 'https://curlew.example/', title: 'The ledger' };

test('both pages of a panel lead on from each of its old names', () => {
  expect(movedPages(ledger)).toEqual([
    { from: '/panels/ruddlestone-r-60/', to: '/panels/ruddlestone-r60/', title: 'Ruddlestone R60' },
    {
      from: '/panels/ruddlestone-r-60/methodology/',
      to: '/panels/ruddlestone-r60/methodology/',
      title: 'Ruddlestone R60, every reading,',
    },
  ]);
});

test('a file for the comparison lies at the old address too, and hosts that read a list of redirects get one', () => {
  expect(movedFiles(ledger).map(({ from, to }) => [from, to])).toEqual([
    ['/data/compare/ruddlestone-r-60.json', '/data/compare/ruddlestone-r60.json'],
  ]);
  const [comment, ...lines] = redirectsText(ledger).trimEnd().split('\n');
  expect(comment).toMatch(/^# /);
  expect(lines).toEqual([
    '/panels/ruddlestone-r-60/ /panels/ruddlestone-r60/ 301',
    '/panels/ruddlestone-r-60/methodology/ /panels/ruddlestone-r60/methodology/ 301',
    '/data/compare/ruddlestone-r-60.json /data/compare/ruddlestone-r60.json 301',
  ]);
});

test('a page leads on by itself, by a link and for search engines, and nothing in it is inline', () => {
  const html = movedHtml({ from: '/panels/a/', to: '/panels/b/', title: 'Grebe & Co' }, GUIDE);
  expect(html).toContain('<link rel="canonical" href="https://curlew.example/panels/b/">');
  expect(html).toContain('<meta http-equiv="refresh" content="0; url=/panels/b/">');
  expect(html).toContain('<meta name="robots" content="noindex">');
  expect(html).toContain('<a href="/panels/b/">Grebe &amp; Co</a>');
  expect(html).not.toMatch(/<script(?![^>]* src=)|<style| style=| on\w+=/);
});
