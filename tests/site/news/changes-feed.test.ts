/** Held against RFC 4287 by its own schema and prose, and by what a library of others reads in it. */
import { XMLValidator } from 'fast-xml-parser';
import { detectAtomFeed, parseAtomFeed } from 'feedsmith';
import { beforeAll, describe, expect, test } from 'vitest';
import { guideEvents } from '../../../src/ledger/events.ts';
import type { Ledger, PanelEntry } from '../../../src/ledger/ledger.ts';
import { changesFeed, MOST_ENTRIES } from '../../../src/site/news/changes-feed.ts';
import { atomFaults } from '../../support/atom-rules.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

/** The reader gives a text with its type. */
const textOf = (it: string | { value: string } | undefined) => (typeof it === 'object' ? it.value : (it ?? ''));

let ledger: Ledger;
let xml: string;
beforeAll(() => {
  ledger = demoLedger().ledger;
  xml = changesFeed(ledger);
});

test('is Atom that a reader of feeds takes, with every event in it', () => {
  expect(XMLValidator.validate(xml)).toBe(true);
  expect(detectAtomFeed(xml)).toBe(true);
  const feed = parseAtomFeed(xml);
  expect(feed.entries?.map((it) => it.id)).toEqual(
    guideEvents(ledger).map((it) => `tag:${new URL(ledger.guide.site).hostname},${it.date}:${it.id}`),
  );
  expect(textOf(feed.title)).toContain(ledger.guide.title);
  expect(feed.links?.find((it) => it.rel === 'self')?.href).toBe(new URL('/changes.xml', ledger.guide.site).href);
  expect(feed.authors?.[0]?.name).toBe(ledger.guide.publisher);
});

describe('RFC 4287', () => {
  test('has nothing against it: its schema, the rules that the schema carries, and its prose', () => {
    expect(atomFaults(xml)).toEqual([]);
    const empty = changesFeed({ ...ledger, panels: new Map(), classes: [], corrections: [] });
    expect(atomFaults(empty)).toEqual([]);
  });

  // The feed with one fault, and what is said of it.
  test.each<[fault: string, mend: (it: string) => string, said: RegExp]>([
    ['no day', (it) => it.replace(/<updated>.*?<\/updated>/, ''), /Expecting an element updated/],
    ['a day without a time', (it) => it.replace(/T00:00:00\.000Z/, ''), /failed to validate content/],
    ['two titles', (it) => it.replace(/<title>.*?<\/title>/, '$&$&'), /Extra element title|title failed/],
    ['an element that Atom has not', (it) => it.replace('<entry>', '<pubDate>x</pubDate><entry>'), /pubDate/],
    ['nobody who says it', (it) => it.replace(/<author>.*?<\/author>/s, ''), /must have an atom:author/],
    ['an entry that leads nowhere', withoutContent, /must have at least one atom:link/],
    ['an id twice', (it) => it.replace(/(<entry>.*?<\/entry>)/s, '$1$1'), /^id "tag:.*" stands twice$/],
    ['an id that is a path', (it) => it.replace(/<id>tag:[^<]*/, '<id>/changes/1'), /is no absolute IRI/],
    ['an entry newer than the feed', (it) => it.replace(/<updated>2026/, '<updated>2025'), /^the feed is of 2025/],
    ['entries out of order', outOfOrder, /^entries are not newest first$/],
    ['no address of its own', (it) => it.replace(/<link rel="self".*?>/, ''), /^no link with rel="self"$/],
    [
      'a relative address',
      (it) => it.replaceAll('href="https://panels.curlewstrand.example', 'href="'),
      /not absolute/,
    ],
    [
      'markup that is not escaped',
      (it) => it.replace(/<!\[CDATA\[(<p>.*?)\]\]>/s, '$1'),
      /^HTML with elements of its own in it$/,
    ],
    ['a script in its text', (it) => it.replace('<![CDATA[<p>', '<![CDATA[<script>x()</script><p>'), /^<script>$/],
    ['a paragraph left open', (it) => it.replace('<![CDATA[<p>', '<![CDATA[<p><b>'), /^<b> is not closed$/],
  ])('%s is found', (_fault, change, said) => {
    const faulty = change(xml);
    expect(faulty).not.toBe(xml);
    expect(atomFaults(faulty)).toContainEqual(expect.stringMatching(said));
  });
});

/** The first entry without its link and its text. */
function withoutContent(it: string): string {
  return it.replace(
    /(<entry>.*?)<link [^>]*>(.*?)<content.*?<\/content>/s,
    (_all, one: string, two: string) => one + two,
  );
}

/** The last entry before all others. */
function outOfOrder(it: string): string {
  const last = it.slice(it.lastIndexOf('<entry>'), it.lastIndexOf('</feed>'));
  return it.replace(last, '').replace('<entry>', `${last}<entry>`);
}

test('is of its newest event’s day, and the same on whatever day it is built', () => {
  expect(parseAtomFeed(xml).updated).toBe(`${guideEvents(ledger)[0]?.date}T00:00:00.000Z`);
  const [later, muchLater] = ['2027-05-01', '2027-07-01'].map((today) => changesFeed({ ...ledger, today }));
  expect(muchLater).toBe(later);
  const empty = parseAtomFeed(changesFeed({ ...ledger, panels: new Map(), classes: [], corrections: [] }));
  expect(empty.updated).toBe(`${ledger.guide.tariff.date}T00:00:00.000Z`);
});

describe('whatever stands in the files', () => {
  const gannet = (name: string): Ledger => {
    const panels = [...ledger.panels].map(([slug, it]): [string, PanelEntry] => [
      slug,
      slug === 'kelpwright-gannet' ? { ...it, name } : it,
    ]);
    return { ...ledger, panels: new Map(panels) };
  };

  test.each(['A & B', '<script>alert(1)</script>', ']]><x/>', '"quoted" &amp;'])('%s is text and stays it', (name) => {
    const text = changesFeed(gannet(name));
    expect(atomFaults(text)).toEqual([]);
    const title = textOf(parseAtomFeed(text).entries?.find((it) => it.id?.includes('tested-2026-11-17'))?.title);
    const plain = title
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&amp;', '&');
    expect(plain).toBe(`New test: ${name}`);
    expect(title).not.toContain('<');
  });

  test('no more entries than it may have, the newest', () => {
    const [entry] = ledger.corrections;
    if (!entry) throw new Error('the demo has no correction');
    const corrections = Array.from({ length: 60 }, (_, i) => ({ ...entry, id: `correction-${i}`, date: '2026-11-25' }));
    const many = parseAtomFeed(changesFeed({ ...ledger, corrections })).entries ?? [];
    expect(many).toHaveLength(MOST_ENTRIES);
    expect(many.every((it) => it.id?.includes('correction-'))).toBe(true);
  });
});
