import type { CardLayout } from './card-formats.ts';
import { Drawing } from './drawing.ts';
import { INK } from './drawing-ink.ts';
import { fieldDrawing } from './field-drawing.ts';
import { figureRow, scaleRoom } from './figure-row.ts';
import { letterWidth } from './lettering.ts';
import type { PanelCardView } from './panel-card-view.ts';
import { qrCode } from './qr-code.ts';

/** Of the width, beside the figures. */
const SIDE = 0.27;
/** Of the width, for the code under the figures. */
const CODE_UNDER = 0.36;

/** A panel's card. */
export function panelCard(view: PanelCardView, layout: CardLayout): Drawing {
  const { width, height, margin, sides, text, small } = layout;
  const drawing = new Drawing(width, height);
  const right = width - margin;
  const isBeside = sides === 'beside';
  const side = isBeside ? SIDE * (width - 2 * margin) : 0;
  const gap = 1.3 * text;
  const inner = right - margin - (isBeside ? side + gap : 0);
  const smallest = { most: 1, size: small, fill: INK.soft } as const;

  // What it is, and when it was read.
  // Beside the figures there is room for one line of it, unless that would be small.
  const isLong = isBeside && letterWidth(view.name, 'title', 1.1 * text) > inner;
  let y = drawing.lines(view.name, margin, margin, inner, {
    size: isLong ? 1.1 * text : layout.name,
    least: small,
    most: isLong || !isBeside ? 2 : 1,
    face: 'title',
    leading: 1.08,
  });
  y = drawing.lines(view.read, margin, y + 0.12 * text, inner, { ...smallest, most: isBeside ? 1 : 2 });
  y += 0.2 * text;
  drawing.rule(margin, y, margin + inner, y, INK.ink, 4);
  if (!isBeside) y += 0.4 * text;

  // From the foot up: whose card it is, and what has to be said with it, which may take that line too.
  const whole = isBeside ? inner : right - margin;
  const foot = height - margin - 1.25 * small;
  const remarks = view.remarks.join(' ');
  const count = remarks === '' ? 0 : drawing.countLines(remarks, whole, { size: small });
  const isShared = isBeside && count > 1;
  const remarkTop = foot - 1.2 * small * (isShared ? count - 1 : count);
  if (count > 0) drawing.lines(remarks, margin, remarkTop, whole, { ...smallest, fill: INK.ink, most: count });
  if (!isShared) {
    const bars = drawing.write('bar: 95 %', margin + whole, foot + 0.9 * small, { ...smallest, anchor: 'end' });
    drawing.lines(view.guide, margin, foot, whole - bars - small, smallest);
  }

  // The figures between.
  const below = isBeside ? 0 : CODE_UNDER * (width - 2 * margin) + gap;
  const bottom = remarkTop - below - 0.2 * text;
  const row = Math.min((bottom - y) / Math.max(view.figures.length, 3), 4.2 * text);
  const room = scaleRoom(view.figures, layout);
  for (const [i, it] of view.figures.entries()) {
    figureRow(drawing, it, { x: margin, y: y + i * row, width: inner, height: row }, room, layout);
  }

  // How large it is, and the way to every reading.
  const codeSize = isBeside ? side : below - gap;
  const code = { x: right - codeSize, y: isBeside ? height - margin - codeSize : bottom + 0.7 * gap };
  if (layout.hasCode) drawing.add(...qrCode(view.address, code.x, code.y, codeSize));
  if (view.field) {
    const box = isBeside
      ? {
          x: right - side,
          y: margin,
          width: side,
          height: (layout.hasCode ? code.y - gap / 2 : height - margin) - margin,
        }
      : { x: margin, y: code.y, width: right - margin - codeSize - gap, height: codeSize };
    fieldDrawing(drawing, view.field, box, layout);
  }
  return drawing;
}
