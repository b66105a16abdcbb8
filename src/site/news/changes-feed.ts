import { Feed } from 'feed';
import { guideEvents } from '../../ledger/events.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { escaped } from '../shared/html.ts';
import { siteAddress } from '../shared/site-address.ts';
import { type EventWords, eventWords } from './event-words.ts';

/** Where the feed lies. */
export const FEED_ADDRESS = '/changes.xml';

/** Entries that it has at most, the newest. */
export const MOST_ENTRIES = 50;

/**
 * `changes.xml`, a feed in Atom (RFC 4287): what has happened, newest first. Every day in it is one of the files, and none
 * that of a build: the same content gives the same feed. Ids are tag URIs (RFC 4151) of the day and what happened on it, so
 * that an entry is known again wherever the guide lies.
 */
export function changesFeed(ledger: Ledger): string {
  const { guide } = ledger;
  const at = (path: string) => siteAddress(path, guide.site);
  const events = guideEvents(ledger).slice(0, MOST_ENTRIES);
  const feed = new Feed({
    id: at(FEED_ADDRESS),
    title: `Changes – ${guide.title}`,
    description: 'Tests, re-tests, prices that move a rank, methods and corrections',
    link: at('/changes/'),
    feed: at(FEED_ADDRESS),
    // A guide in which nothing has happened yet still has a day that it speaks of.
    updated: dayOf(events[0]?.date ?? guide.tariff.date),
    generator: false,
    author: { name: guide.publisher, link: guide.site },
    ...(guide.licence && { copyright: `${guide.licence.title}: ${guide.licence.link}` }),
  });
  for (const event of events) {
    const words = eventWords(event, ledger);
    feed.addItem({
      id: tagOf(words, guide.site),
      // The library marks titles and contents as HTML.
      title: escaped(`${words.label}: ${words.name}`),
      link: at(words.address),
      date: dayOf(words.date),
      published: dayOf(words.date),
      content: contentOf(words, at),
      category: [{ term: event.kind }],
    });
  }
  return feed.atom1();
}

const dayOf = (date: string) => new Date(`${date}T00:00:00Z`);

const tagOf = ({ id, date }: EventWords, site: string) => `tag:${new URL(site).hostname},${date}:${id}`;

function contentOf({ text, rows, name }: EventWords, at: (path: string) => string): string {
  const list = rows.map(
    (it) =>
      `<li><a href="${escaped(at(it.address))}">${escaped(it.name)}</a>${it.text && `: ${escaped(it.text)}`}</li>`,
  );
  return [`<p>${escaped(text || `${name}.`)}</p>`, ...(list.length > 0 ? [`<ul>${list.join('')}</ul>`] : [])].join('');
}
