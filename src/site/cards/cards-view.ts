import type { Ledger } from '../../ledger/ledger.ts';
import { METHODS } from '../../measure/methods.ts';
import { badgeCode, badgeSize, badgeWords, frameCode } from './badge-files.ts';
import { badgeViews } from './badge-view.ts';
import { methodCardAddress, panelCardAddress } from './card-files.ts';
import { CARD_FORMATS } from './card-formats.ts';

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
  panels: ListedCards[];
  methods: ListedCards[];
  badges: Array<{ panel: string; badges: ListedBadge[] }>;
  /** The small card of the first of them, and its code; others differ by their address and name. */
  frame?: { address: string; code: string };
}

/** Every card and badge of the guide. */
export function cardsView(ledger: Ledger): CardsView {
  const { cards, site } = ledger.guide;
  const panels = [...ledger.panels.values()].toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
  const files = (addressOf: (format: (typeof CARD_FORMATS)[number]['id']) => string) =>
    CARD_FORMATS.map(({ id, name }) => ({
      id,
      format: name,
      png: `${addressOf(id)}.png`,
      svg: `${addressOf(id)}.svg`,
    }));
  const [first] = cards.badges && panels[0] ? badgeViews(panels[0], ledger) : [];
  return {
    ...(first && { frame: { address: `${first.address}.html`, code: frameCode(first, site) } }),
    panels: cards.show
      ? panels.map(({ slug, name }) => ({
          name,
          page: `/panels/${slug}/`,
          files: files((format) => panelCardAddress(slug, format)),
        }))
      : [],
    methods: cards.show
      ? METHODS.map(({ id, name }) => ({
          name,
          page: `/methods/${id}/`,
          files: files((format) => methodCardAddress(id, format)),
        }))
      : [],
    badges: cards.badges
      ? panels.map((panel) => ({
          panel: panel.name,
          badges: badgeViews(panel, ledger).map((view) => ({
            name: view.name,
            picture: `${view.address}.svg`,
            size: badgeSize(view),
            words: badgeWords(view),
            code: badgeCode(view, site),
          })),
        }))
      : [],
  };
}
