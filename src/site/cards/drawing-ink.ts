/** The guide's paper and ink (`styles/tokens.css`, the light ones): a card is a sheet of paper wherever it is shown. */
export const INK = {
  paper: '#fcfbf8',
  ink: '#1b2125',
  soft: '#545c61',
  rule: '#d5d0c3',
  accent: '#0b5a70',
  tint: '#dfe8e8',
} as const;

/** How strong a tint of the accent is: what lies under it shows, so that two on one another make a darker one. */
export const LIGHT = 0.12;
