import type { CardLayout } from './card-formats.ts';
import type { Drawing } from './drawing.ts';
import { INK } from './drawing-ink.ts';
import { letterWidth } from './lettering.ts';
import type { CardFigure } from './panel-card-view.ts';

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** An interval too short to be seen is drawn so long, units of the drawing. */
const LEAST = 6;
/** Height of a row in which nothing touches, in letter sizes; in a lower one the scale has no words at its ends. */
const LOWEST = 1.75;

/** What the scales of a card leave free at their ends, so that all are as long: for `0`, and for the longest end. */
export function scaleRoom(figures: readonly CardFigure[], { small }: CardLayout): { left: number; right: number } {
  const words = figures.flatMap((it) => (it.scale ? [letterWidth(it.scale.end, 'text', small)] : []));
  const between = 0.4 * small;
  return { left: letterWidth('0', 'text', small) + between, right: Math.max(0, ...words) + between };
}

/** A figure: its name and its value in one line, and under it its interval on the scale that all cards share. */
export function figureRow(
  drawing: Drawing,
  it: CardFigure,
  { x, y, width, height }: Box,
  room: { left: number; right: number },
  layout: CardLayout,
): void {
  const { small } = layout;
  // A low row takes smaller letters, down to the least.
  const text = Math.max(small, Math.min(layout.text, height / LOWEST));
  const line = y + 1.08 * text;
  const named = drawing.write(it.name, x, line, { size: text, fill: INK.soft });
  const valueRoom = width - named - 0.5 * text;
  if (it.value) value(drawing, it.value, x + width, line, valueRoom, { text, small });
  else {
    // Why there is none, where that takes no more than the row.
    const setting = { size: small, most: 2, fill: INK.soft, leading: 1.15 };
    const gap = it.gap ?? '';
    const isShort = drawing.countLines(gap, valueRoom, setting) * 1.2 * small <= height;
    drawing.lines(isShort ? gap : 'not known', x + named + 0.5 * text, line - 0.85 * small, valueRoom, setting);
  }
  // A line of its own for the remark, where the row has one; else it takes the left half of the scale's.
  const isRoomy = height > 2.2 * text + 1.2 * small;
  const isWorded = height >= LOWEST * small;
  const strip = line + (isWorded ? 0.68 : 0.42) * text;
  const remark = { size: small, most: 1, fill: INK.soft };
  if (it.remark && isRoomy) drawing.lines(it.remark, x, strip + 0.5 * small, width, remark);
  if (it.remark && !isRoomy) drawing.lines(it.remark, x, strip - 0.57 * small, 0.5 * width, remark);
  if (it.scale) {
    const from = it.remark && !isRoomy ? 0.53 * width : 0;
    scale(drawing, it.scale, x + from, strip, width - from, room, isWorded ? small : undefined);
  }
}

/** Up to the right: the value bold, what stands behind it not; smaller where the name leaves less room. */
function value(
  drawing: Drawing,
  { strong, rest }: { strong: string; rest: string },
  right: number,
  line: number,
  room: number,
  { text, small }: Pick<CardLayout, 'text' | 'small'>,
): void {
  const large = 1.15 * text;
  const wanted = letterWidth(strong, 'strong', large) + letterWidth(rest, 'text', text);
  const shrink = Math.max(small / text, Math.min(1, room / wanted));
  const width = drawing.write(rest, right, line, { size: text * shrink, anchor: 'end' });
  drawing.write(strong, right - width, line, { size: large * shrink, face: 'strong', anchor: 'end' });
}

/** A line from nought to the scale's end, the interval on it as a bar, the value as a stroke. */
function scale(
  drawing: Drawing,
  { at, from, to, end }: NonNullable<CardFigure['scale']>,
  left: number,
  y: number,
  width: number,
  room: { left: number; right: number },
  letters: number | undefined,
): void {
  const x = left + room.left;
  const length = width - room.left - room.right;
  drawing.across(x, x + length, y, INK.soft, 2);
  for (const place of [x, x + length]) drawing.down(place, y - 9, y + 9, INK.soft, 2);
  const bar = Math.max(LEAST, (to - from) * length);
  const middle = x + ((from + to) / 2) * length;
  drawing.bar({ x: middle - bar / 2, y: y - 9, width: bar, height: 18 }, INK.accent);
  drawing.down(x + at * length, y - 16, y + 16, INK.ink, 5);
  if (letters === undefined) return;
  const words = { size: letters, fill: INK.soft } as const;
  drawing.write('0', left, y + 0.33 * letters, words);
  drawing.write(end, left + width, y + 0.33 * letters, { ...words, anchor: 'end' });
}
