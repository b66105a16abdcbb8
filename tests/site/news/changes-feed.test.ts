/** Held against RFC 4287 by what a library of others reads in it, and by the RFC's own requirements. */
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { detectAtomFeed, parseAtomFeed } from 'feedsmith';
import { beforeAll, describe, expect, test } from 'vitest';
import { guideEvents } from '../../../src/ledger/events.ts';
import type { Ledger, PanelEntry } from '../../../src/ledger/ledger.ts';
import { changesFeed, MOST_ENTRIES } from '../../../src/site/news/changes-feed.ts';
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

test('what RFC 4287 asks for: id, title and updated once each, an author, a link of each entry without content elsewhere', () => {
  const { feed } = new XMLParser({ ignoreAttributes: false, parseTagValue: false }).parse(xml);
  expect(feed['@_xmlns']).toBe('http://www.w3.org/2005/Atom');
  for (const it of [feed, ...feed.entry]) {
    for (const once of ['id', 'title', 'updated']) expect([once, Array.isArray(it[once])]).toEqual([once, false]);
    // 4.2.6: an IRI; 3.3: a date of RFC 3339.
    expect(() => new URL(it.id)).not.toThrow();
    expect(it.updated).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/);
  }
  expect(new Set(feed.entry.map((it: { id: string }) => it.id)).size).toBe(feed.entry.length);
  for (const it of feed.entry) expect(it.link['@_href']).toMatch(/^https:\/\//);
});

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
    expect(XMLValidator.validate(text)).toBe(true);
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
