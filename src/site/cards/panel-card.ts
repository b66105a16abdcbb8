import { cardCode } from './card-code.ts';
import type { CardLayout } from './card-formats.ts';
import { Drawing } from './drawing.ts';
import { INK } from './drawing-ink.ts';
import { fieldDrawing } from './field-drawing.ts';
import { figureRow, scaleRoom } from './figure-row.ts';
import { letterWidth } from './lettering.ts';
import type { PanelCardView } from './panel-card-view.ts';

/** Of the width, beside the figures, at least; a code may need more. */
const SIDE = 0.29;
/** Height of a figure's row at most, in letter sizes: what is left goes to the picture. */
const ROW = { beside: 4.2, under: 3.1 } as const;

/** A panel's card. */
export function panelCard(view: PanelCardView, layout: CardLayout): Drawing {
  const { width, height, margin, sides, text } = layout;
  const drawing = new Drawing(width, height);
  const code = cardCode(view.address, layout);
  const right = width - margin;
  const isBeside = sides === 'beside';
  const gap = Math.max((isBeside ? 0.9 : 1.2) * text, code?.quiet ?? 0);
  const side = Math.max(code?.size ?? 0, isBeside ? SIDE * (width - 2 * margin) : 0);
  const inner = isBeside ? right - side - gap - margin : right - margin;

  const y = head(drawing, view, layout, inner);
  // Under the figures the code stands in the corner.
  const remarkTop = foot(drawing, view, layout, isBeside ? inner : inner - side - gap);

  // The figures between, and under them the picture where it does not stand beside.
  const picture = isBeside ? 0 : side + gap;
  const bottom = remarkTop - 0.2 * text;
  const row = Math.min((bottom - picture - y) / Math.max(view.figures.length, 3), ROW[sides] * text);
  const room = scaleRoom(view.figures, layout);
  for (const [i, it] of view.figures.entries()) {
    figureRow(drawing, it, { x: margin, y: y + i * row, width: inner, height: row }, room, layout);
  }

  // How large it is, and the way to every reading.
  const end = y + row * view.figures.length;
  code?.draw(drawing, isBeside ? undefined : 'Every reading:');
  if (view.field) {
    const box = isBeside
      ? { x: right - side, y: margin, width: side, bottom: code ? code.y - code.quiet : height - margin }
      : { x: margin, y: end + 0.4 * text, width: inner - side - gap, bottom };
    fieldDrawing(drawing, view.field, box, layout);
  }
  return drawing;
}

/** What it is, when it was read and by whom; where the next thing may begin. */
function head(drawing: Drawing, { name, from }: PanelCardView, layout: CardLayout, width: number): number {
  const { margin, sides, text, small } = layout;
  const isBeside = sides === 'beside';
  // Beside the figures there is room for one line of the name, unless that would be small.
  const isLong = isBeside && letterWidth(name, 'title', 1.1 * text) > width;
  const title = { size: isLong ? 1.1 * text : layout.name, least: small, face: 'title', leading: 1.08 } as const;
  let y = drawing.lines(name, margin, margin, width, { ...title, most: isLong || !isBeside ? 2 : 1 });
  const words = { size: small, fill: INK.soft, most: isBeside ? 1 : 2 };
  y = drawing.lines(from, margin, y + 0.12 * text, width, words) + 0.2 * text;
  drawing.across(margin, margin + width, y, INK.ink, 4);
  return isBeside ? y : y + 0.4 * text;
}

/** The foot: what has to be said with the figures, never cut, and behind it what their bars are; its upper end. */
function foot(drawing: Drawing, { remarks }: PanelCardView, layout: CardLayout, width: number): number {
  const { height, margin, small } = layout;
  const size = { size: small };
  const bars = 'bar:\u00a095\u00a0%';
  const right = letterWidth(bars, 'text', small) + small;
  const said = remarks.join(' ');
  const lines = said === '' ? [] : drawing.inLines(said, width, size);
  const last = lines.at(-1) ?? '';
  // The bars have the last line's end, or a line of their own.
  const isOwn = last === '' || letterWidth(last, 'text', small) + right > width;
  const count = lines.length + (isOwn ? 1 : 0);
  const lowest = height - margin - 0.25 * small;
  const top = lowest - 1.2 * small * (count - 1) - 0.9 * small;
  for (const [i, line] of lines.entries()) drawing.write(line, margin, top + (0.9 + 1.2 * i) * small, size);
  const [x, anchor] = isOwn ? ([margin, 'start'] as const) : ([margin + width, 'end'] as const);
  drawing.write(bars, x, lowest, { ...size, fill: INK.soft, anchor });
  return top;
}
