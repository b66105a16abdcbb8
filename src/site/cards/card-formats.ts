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
  /** Side of a code's module; left out where the picture is the link itself and needs no code. */
  module?: number;
}

/** Width of a phone's screen, CSS px: cards are laid out to be read on it. */
const PHONE = 390;

/** The least letter size, px, and the least side of a code's module, px, on a card as wide as a phone's screen. */
export const LEAST_ON_PHONE = { letters: 12, module: 3 } as const;

/** How large a length of a drawing is where that is as wide as a phone's screen, px. */
export const onPhone = (length: number, { width }: Pick<CardLayout, 'width'>) => (length / width) * PHONE;

/** A format of a card to show. */
export interface CardFormat {
  id: 'wide' | 'tall' | 'a6';
  name: string;
  use: string;
  layout: CardLayout;
  /** Width of its PNG, px. */
  pixels: number;
  /** Dots an inch of its PNG, where it is for paper: programs print it as large as it is meant. */
  perInch?: number;
}

/**
 * Letters are no smaller than 12 px where a card is as wide as a phone's screen; on paper of A6 that is 9 point, more
 * than what is read without effort (8 point; common practice, no source). Modules of codes are whole pixels of the PNG.
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
      text: 62,
      small: 59.5,
      module: 15,
    },
    pixels: 1920,
  },
  {
    id: 'tall',
    name: '9:16',
    use: 'a film or a story for phones',
    layout: { width: 1080, height: 1920, margin: 60, sides: 'under', name: 104, text: 52, small: 42, module: 11 },
    pixels: 1080,
  },
  {
    id: 'a6',
    name: 'A6',
    use: 'a shelf label, 105 × 148 mm at 300 dots an inch',
    layout: { width: 1240, height: 1748, margin: 70, sides: 'under', name: 92, text: 48, small: 40, module: 12 },
    pixels: 1240,
    perInch: 300,
  },
];

/** The picture that stands where a panel's page is linked to, px. */
export const PREVIEW = { width: 1200, height: 630 } as const;

/** A method's is its wide card. */
export const METHOD_PREVIEW = { width: 1920, height: 1080 } as const;

/** The wide card's drawing for a panel's, without the code. */
export const PREVIEW_LAYOUT: CardLayout = {
  width: 2080,
  height: 1092,
  margin: 48,
  sides: 'beside',
  name: 94,
  text: 66,
  small: 64.5,
};
