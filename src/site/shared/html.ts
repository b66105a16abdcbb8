import { type Piece, type PieceElement, SVG_TAGS } from './browser/pieces.ts';

/** Markup, as against text that has yet to be escaped. */
export class Html {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

/** What may stand in a template: text is escaped, markup taken as it is, lists joined, what is absent left out. */
export type Part = string | number | Html | readonly Part[] | undefined | null | false;

/**
 * Markup from a template, for what is too long to be rendered element by element. Every part is escaped, in
 * attributes (always in double quotes) as well as between elements.
 *
 * @example html`<td title="${title}">${rows.map((row) => html`<b>${row}</b>`)}</td>`
 */
export function html(strings: TemplateStringsArray, ...parts: Part[]): Html {
  let text = strings[0] ?? '';
  for (let i = 0; i < parts.length; i++) text += printed(parts[i]) + strings[i + 1];
  return new Html(text);
}

function printed(part: Part): string {
  if (typeof part === 'string') return escaped(part);
  if (part instanceof Html) return part.text;
  if (Array.isArray(part)) {
    let text = '';
    for (const one of part) text += printed(one);
    return text;
  }
  return typeof part === 'number' ? String(part) : '';
}

const SPECIAL = /[&<>"]/;
const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text for markup. Most of it has nothing to escape, and is not copied then. */
export function escaped(text: string): string {
  return SPECIAL.test(text) ? text.replace(/[&<>"]/g, (it) => ESCAPES[it] ?? it) : text;
}

/** Text for markup between elements alone, where quotes stand for themselves. */
export const escapedText = (text: string) => text.replace(/[&<>]/g, (it) => ESCAPES[it] ?? it);

/** Pieces as markup. */
export function piecesHtml(pieces: readonly Piece[]): Html {
  return new Html(textsOf(pieces));
}

const SHAPES: ReadonlySet<string> = new Set(SVG_TAGS);

/** Of a drawing: there an element without anything in it may end where it begins. */
const isShape = (tag: string) => SHAPES.has(tag);

function textsOf(pieces: readonly Piece[]): string {
  let text = '';
  for (const it of pieces) text += typeof it === 'string' ? escaped(it) : elementText(it);
  return text;
}

function elementText({ tag, attributes, pieces }: PieceElement): string {
  let text = `<${tag}`;
  for (const name in attributes) {
    const value = attributes[name];
    if (typeof value === 'string') text += ` ${name}="${escaped(value)}"`;
    else if (typeof value === 'number') text += ` ${name}="${value}"`;
    else if (value === true) text += ` ${name}`;
  }
  if (pieces.length === 0 && isShape(tag)) return `${text}/>`;
  return `${text}>${textsOf(pieces)}</${tag}>`;
}
