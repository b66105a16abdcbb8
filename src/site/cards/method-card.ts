import type { Guide } from '../../content/schema/guide.ts';
import type { Method } from '../../measure/methods.ts';
import { SKETCH_OF, SKETCHES } from '../methods/sketches/index.ts';
import type { Sketch } from '../methods/sketches/sketch.ts';
import { siteAddress } from '../shared/site-address.ts';
import { hasMethodCard } from './card-files.ts';
import type { CardLayout } from './card-formats.ts';
import { Drawing } from './drawing.ts';
import { INK } from './drawing-ink.ts';
import { letterWidth } from './lettering.ts';
import { qrCode } from './qr-code.ts';
import { drawSketch } from './sketch-drawing.ts';

/** What stands on a method's card: its sketch, which explains it in one picture. */
export interface MethodCardView {
  name: string;
  version: string;
  sketch: Sketch;
  /** What the sketch shows, in words. */
  words: string;
  guide: string;
  /** What the code leads to, in full. */
  address: string;
}

/** A method's card; undefined where no picture explains it. */
export function methodCardView(
  { id, name, version }: Pick<Method, 'id' | 'name' | 'version'>,
  guide: Pick<Guide, 'title' | 'site'>,
): MethodCardView | undefined {
  const of = hasMethodCard(id) ? SKETCH_OF[id] : undefined;
  if (!of) return undefined;
  const sketch: Sketch = SKETCHES[of];
  return {
    name,
    version: `Version ${version}`,
    sketch,
    words: sketch.words,
    guide: guide.title,
    address: siteAddress(`/methods/${id}/`, guide.site),
  };
}

/** Of the width, for the code. */
const CODE = { beside: 0.23, under: 0.34 } as const;

/** The card: name, sketch as large as there is room, its words, and the way to the method. */
export function methodCard(view: MethodCardView, layout: CardLayout): Drawing {
  const { width, height, margin, sides, text, small } = layout;
  const drawing = new Drawing(width, height);
  const inner = width - 2 * margin;
  const right = width - margin;
  const isBeside = sides === 'beside';
  const side = CODE[sides] * inner;
  const title = { size: isBeside ? 1.4 * text : layout.name, least: small, face: 'title', leading: 1.08 } as const;
  let y = drawing.lines(view.name, margin, margin, inner, { ...title, most: isBeside ? 1 : 2 });
  y += 0.2 * text;
  drawing.rule(margin, y, right, y, INK.ink, 4);
  y += 0.4 * text;

  // The foot: whose card it is, and the method's version.
  const foot = height - margin - 1.25 * small;
  const soft = { size: small, fill: INK.soft } as const;
  const footRight = isBeside ? right : right - side - text;
  if (isBeside) {
    const said = letterWidth(view.version, 'text', small);
    drawing.write(view.version, right, foot + 0.9 * small, { ...soft, anchor: 'end' });
    drawing.lines(view.guide, margin, foot, inner - said - small, { ...soft, most: 1 });
  } else {
    drawing.lines(`${view.guide}. ${view.version}`, margin, foot - 1.2 * small, footRight - margin, {
      ...soft,
      most: 2,
    });
  }

  const letters = { size: isBeside ? small : text, most: 9 } as const;
  if (isBeside) {
    const lines = drawing.countLines(view.words, inner, letters);
    const wordsTop = foot - 1.2 * letters.size * lines - 0.2 * text;
    const box = { x: margin, y, width: inner - side - text, height: wordsTop - y - 0.3 * text };
    drawSketch(drawing, view.sketch, box);
    const code = Math.min(side, box.height);
    drawing.add(...qrCode(view.address, right - code, y, code));
    drawing.lines(view.words, margin, wordsTop, inner, letters);
    return drawing;
  }
  const code = { x: right - side, y: height - margin - side };
  drawing.add(...qrCode(view.address, code.x, code.y, side));
  const lines = drawing.countLines(view.words, inner, letters);
  const room = code.y - y - 0.8 * text - 1.2 * letters.size * lines;
  const sketched = Math.min(room, (inner / view.sketch.width) * view.sketch.height + text);
  drawSketch(drawing, view.sketch, { x: margin, y: y + (room - sketched) / 2, width: inner, height: sketched });
  drawing.lines(view.words, margin, y + room + 0.3 * text, inner, letters);
  return drawing;
}
