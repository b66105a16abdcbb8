/** Each try is so much smaller than the one before. */
const STEP = 0.95;

/**
 * Text in lines that fit: at the largest letter size at which it does, and cut with an ellipsis where it does at none.
 *
 * @param widthOf of a text at a letter size
 * @param width none is wider
 * @param most lines there may be
 * @param largest letter size
 * @param least letter size
 */
export function fittedLines(
  text: string,
  widthOf: (text: string, size: number) => number,
  width: number,
  most: number,
  largest: number,
  least: number,
): { size: number; lines: string[] } {
  const words = text.split(/[^\S\u00a0]+/).filter((it) => it !== '');
  for (let size = largest; size > least; size *= STEP) {
    const lines = inLines(words, (it) => widthOf(it, size) <= width);
    if (lines && lines.length <= most) return { size, lines };
  }
  const fits = (it: string) => widthOf(it, least) <= width;
  const lines = inLines(words, fits);
  if (lines && lines.length <= most) return { size: least, lines };
  return { size: least, lines: cutLines(text, fits, most) };
}

/** Words in as few lines as hold them; undefined where a word alone is too wide. */
function inLines(words: readonly string[], fits: (line: string) => boolean): string[] | undefined {
  const lines: string[] = [];
  for (const word of words) {
    if (!fits(word)) return undefined;
    const last = lines.at(-1);
    if (last !== undefined && fits(`${last} ${word}`)) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** As much of the text as so many lines hold, letter by letter, with an ellipsis. */
function cutLines(text: string, fits: (line: string) => boolean, most: number): string[] {
  const lines: string[] = [];
  let rest = [...text.replace(/\s+/g, ' ').trim()];
  while (rest.length > 0 && lines.length < most) {
    const isLast = lines.length === most - 1;
    if (fits(rest.join(''))) return [...lines, rest.join('')];
    let count = rest.length;
    while (count > 1 && !fits(rest.slice(0, count).join('') + (isLast ? '…' : ''))) count -= 1;
    const space = rest.slice(0, count + 1).lastIndexOf(' ');
    if (space > 0) count = space;
    lines.push(rest.slice(0, count).join('').trimEnd() + (isLast ? '…' : ''));
    rest = [...rest.slice(count).join('').trimStart()];
  }
  return lines;
}
