/** What is wrong with how text stands on a card. */
import { LEAST_ON_PHONE, onPhone } from '../../src/site/cards/card-formats.ts';
import type { Drawing, Run } from '../../src/site/cards/drawing.ts';

/** What is set up to one another touches. */
const TOUCH = 0.01;

export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** What is printed of a line: from its capitals' height to a little below its base line. */
export const boxOf = ({ x, y, width, size }: Run): Box => ({
  left: x,
  right: x + width,
  top: y - 0.68 * size,
  bottom: y + 0.05 * size,
});

const meet = (one: Box, other: Box) =>
  one.left < other.right - TOUCH &&
  other.left < one.right - TOUCH &&
  one.top < other.bottom - TOUCH &&
  other.top < one.bottom - TOUCH;

/** Text that leaves the drawing, lies on other text or on what has to be kept free, or is too small on a phone. */
export function drawingFaults(drawing: Drawing): string[] {
  const faults: string[] = [];
  for (const [i, run] of drawing.runs.entries()) {
    const own = boxOf(run);
    if (own.left < 0 || own.right > drawing.width || own.top < 0 || own.bottom > drawing.height)
      faults.push(`"${run.text}" leaves the card`);
    for (const other of drawing.runs.slice(i + 1)) {
      if (meet(own, boxOf(other))) faults.push(`"${run.text}" lies on "${other.text}"`);
    }
    for (const { what, x, y, width, height } of drawing.free) {
      if (meet(own, { left: x, right: x + width, top: y, bottom: y + height }))
        faults.push(`"${run.text}" lies on ${what}`);
    }
    const size = onPhone(run.size, drawing);
    if (size < LEAST_ON_PHONE.letters) faults.push(`"${run.text}" has letters of ${size.toFixed(1)} px on a phone`);
  }
  return faults;
}
