/** Outlines of marks around nought, of about the same area, so that none looks weightier. */
const OUTLINES = [
  'M-4 0a4 4 0 1 0 8 0a4 4 0 1 0-8 0z',
  'M-3.6-3.6h7.2v7.2h-7.2z',
  'M0-5 5 0 0 5-5 0z',
  'M0-5 4.8 3.6h-9.6z',
  'M0 5-4.8-3.6h9.6z',
  'M-5-2h3v-3h4v3h3v4h-3v3h-4v-3h-3z',
];

/** Shape of the marks of a size class, by its place among them. From the seventh on they have a bar. */
export function markShape(index: number): string {
  const bar = Math.floor(index / OUTLINES.length) % 2 === 1 ? 'M-4 0h8' : '';
  return `${OUTLINES[index % OUTLINES.length]}${bar}`;
}
