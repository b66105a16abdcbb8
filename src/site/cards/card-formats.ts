/** How a card is laid out: in what order its parts stand, and how large their letters are, in units of the drawing. */
export interface CardLayout {
  width: number;
  height: number;
  margin: number;
  /** Field and code beside the figures, or under them. */
  sides: 'beside' | 'under';
  /** Letter sizes: the name at most, running text, and the least there is. */
  name: number;
  text: number;
  small: number;
  /** With the code that leads to the page; a picture that is the link itself needs none. */
  hasCode: boolean;
}

/** A format of a card to show. */
export interface CardFormat {
  id: 'wide' | 'tall' | 'a6';
  name: string;
  use: string;
  layout: CardLayout;
  /** Width of its PNG, px. */
  pixels: number;
}

/**
 * Letters are no smaller than 11 px where a card is as wide as a phone of 390 px; on paper of A6 that is 8 point, the
 * least that is read without effort (common practice, no source).
 */
export const CARD_FORMATS: readonly CardFormat[] = [
  {
    id: 'wide',
    name: '16:9',
    use: 'a talk or a film',
    layout: {
      width: 1920,
      height: 1080,
      margin: 60,
      sides: 'beside',
      name: 96,
      text: 60,
      small: 54.5,
      hasCode: true,
    },
    pixels: 1920,
  },
  {
    id: 'tall',
    name: '9:16',
    use: 'a film or a story for phones',
    layout: { width: 1080, height: 1920, margin: 60, sides: 'under', name: 104, text: 52, small: 42, hasCode: true },
    pixels: 1080,
  },
  {
    id: 'a6',
    name: 'A6',
    use: 'a shelf label, 105 × 148 mm at 300 dots an inch',
    layout: { width: 1240, height: 1748, margin: 70, sides: 'under', name: 92, text: 46, small: 38, hasCode: true },
    pixels: 1240,
  },
];

/** The picture that stands where a page is linked to. */
export const PREVIEW = { width: 1200, height: 630 } as const;

/** The wide card's drawing for it. Chats and networks show it smaller or larger: letters of 10 px at a phone's width. */
export const PREVIEW_LAYOUT: CardLayout = {
  width: 2080,
  height: 1092,
  margin: 60,
  sides: 'beside',
  name: 100,
  text: 60,
  small: 54.5,
  hasCode: false,
};
