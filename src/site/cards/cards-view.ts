import type { Ledger } from '../../ledger/ledger.ts';
import { methodById } from '../../measure/methods.ts';
import { METHOD_GROUPS } from '../methods/method-groups.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { badgeCode, badgeSize, badgeWords, frameCode } from './badge-files.ts';
import { type BadgeView, badgeViews } from './badge-view.ts';
import { methodCardAddress, panelCardAddress } from './card-files.ts';
import { CARD_FORMATS, type CardFormat } from './card-formats.ts';

/** Something that cards to show are of, with their files. */
export interface ListedCards {
  name: string;
  page: string;
  files: Array<{ id: string; format: string; png: string; svg: string }>;
}

/** A badge as the page lists it. */
export interface ListedBadge {
  name: string;
  picture: string;
  size: { width: number; height: number };
  words: string;
  code: string;
}

/** What the page of cards lists: only what the guide asks for. */
export interface CardsView {
  /** Of each panel its cards to show and its badges. */
  panels: Array<{ slug: string; name: string; cards?: ListedCards; badges: ListedBadge[] }>;
  /** Cards of methods, by the question that they answer. */
  methods: Array<{ id: string; title: string; cards: ListedCards[] }>;
  /** The small card of the first badge, and its code; others differ by their address and name. */
  frame?: { address: string; code: string };
}

/** Every card and badge of the guide. */
export function cardsView(ledger: Ledger): CardsView {
  const { cards, site } = ledger.guide;
  const panels = [...ledger.panels.values()].toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
  const [first] = cards.badges && panels[0] ? badgeViews(panels[0], ledger) : [];
  return {
    ...(first && { frame: { address: `${first.address}.html`, code: frameCode(first, site) } }),
    panels: panels.map((panel) => ({
      slug: panel.slug,
      name: panel.name,
      ...(cards.show && {
        cards: listed(panel.name, panelAddress(panel.slug), (format) => panelCardAddress(panel.slug, format)),
      }),
      badges: cards.badges ? badgeViews(panel, ledger).map((view) => listedBadge(view, site)) : [],
    })),
    methods: cards.show
      ? METHOD_GROUPS.map(({ id, title, methods }) => ({
          id,
          title,
          cards: methods.map(([method]) =>
            listed(methodById(method).name, `/methods/${method}/`, (format) => methodCardAddress(method, format)),
          ),
        }))
      : [],
  };
}

const listed = (name: string, page: string, addressOf: (format: CardFormat['id']) => string): ListedCards => ({
  name,
  page,
  files: CARD_FORMATS.map(({ id, name: format }) => ({
    id,
    format,
    png: `${addressOf(id)}.png`,
    svg: `${addressOf(id)}.svg`,
  })),
});

const listedBadge = (view: BadgeView, site: string): ListedBadge => ({
  name: view.name,
  picture: `${view.address}.svg`,
  size: badgeSize(view),
  words: badgeWords(view),
  code: badgeCode(view, site),
});
