import { type CardCode, cardCode } from './card-code.ts';
import type { CardLayout } from './card-formats.ts';
import { Drawing } from './drawing.ts';
import { INK } from './drawing-ink.ts';
import type { MethodCardView } from './method-card-view.ts';
import { drawSketch } from './sketch-drawing.ts';

/** Of the width, for what stands beside the sketch where there is no code. */
const SIDE = 0.24;

/** The card: name, sketch as large as there is room, a sentence, and the way to the method. */
export function methodCard(view: MethodCardView, layout: CardLayout): Drawing {
  const { width, height, margin, sides, text, small } = layout;
  const drawing = new Drawing(width, height);
  const inner = width - 2 * margin;
  const isBeside = sides === 'beside';
  const title = { size: isBeside ? 1.4 * text : layout.name, least: small, face: 'title', leading: 1.08 } as const;
  let y = drawing.lines(view.name, margin, margin, inner, { ...title, most: isBeside ? 1 : 2 });
  y += 0.2 * text;
  drawing.across(margin, width - margin, y, INK.ink, 4);
  y += 0.3 * text;
  const code = cardCode(view.address, layout);
  if (isBeside) besideCode(drawing, view, layout, y, code);
  else overCode(drawing, view, layout, y, code);
  return drawing;
}

/** Sketch and sentence, and beside them the code with whose card it is over it. */
function besideCode(drawing: Drawing, view: MethodCardView, layout: CardLayout, y: number, code?: CardCode): void {
  const { width, height, margin, text, small } = layout;
  const side = code?.size ?? SIDE * (width - 2 * margin);
  const own = width - 2 * margin - side - Math.max(0.9 * text, code?.quiet ?? 0);
  const lines = drawing.countLines(view.says, own, { size: small });
  const top = height - margin - 1.2 * text * lines;
  drawing.lines(view.says, margin, top, own, { size: text, least: small, most: lines });
  drawSketch(drawing, view.sketch, { x: margin, y, width: own, height: top - y - 0.2 * text }, small);
  code?.draw(drawing);
  const soft = { size: small, fill: INK.soft } as const;
  const right = width - margin - side;
  const room = Math.floor(((code ? code.y - code.quiet : height - margin) - y) / (1.2 * small)) - 1;
  const under = drawing.lines(view.guide, right, y, side, { ...soft, most: Math.min(4, room) });
  drawing.lines(view.version, right, under, side, { ...soft, most: 1 });
}

/** Sentence, sketch and its words, and under them the code beside whose card it is. */
function overCode(drawing: Drawing, view: MethodCardView, layout: CardLayout, y: number, code?: CardCode): void {
  const { width, height, margin, text, small } = layout;
  const inner = width - 2 * margin;
  const bottom = height - margin;
  const side = code?.size ?? 0;
  code?.draw(drawing);
  const soft = { size: small, fill: INK.soft } as const;
  const whose = `${view.guide}. ${view.version.replace(' ', '\u00a0')}`;
  const own = inner - side - 1.2 * text;
  const lines = Math.min(3, drawing.countLines(whose, own, soft));
  drawing.lines(whose, margin, bottom - 1.2 * small * lines, own, { ...soft, most: 3 });

  const from = drawing.lines(view.says, margin, y + 0.2 * text, inner, { size: 1.1 * text, least: small, most: 4 });
  const words = { size: text, most: 9 };
  const wordsTop = (code ? code.y - code.quiet : bottom) - 1.2 * text * drawing.countLines(view.words, inner, words);
  drawing.lines(view.words, margin, wordsTop, inner, words);
  const room = wordsTop - from - 0.6 * text;
  const sketched = Math.min(room, (inner / view.sketch.width) * view.sketch.height);
  drawSketch(
    drawing,
    view.sketch,
    { x: margin, y: from + 0.3 * text + (room - sketched) / 2, width: inner, height: sketched },
    small,
  );
}
