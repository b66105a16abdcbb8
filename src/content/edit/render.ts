import { Document, isCollection, isScalar, type Node, parseDocument, Scalar, visit } from 'yaml';
import { EditError } from './edit-error.ts';
import { type Splice, splice } from './splice.ts';
import { LINE_WIDTH, quotesOf, type YamlStyle } from './yaml-style.ts';
import { isBlockNode, pairOf } from './yaml-tree.ts';

/** YAML as somebody typed it, to stand in a file just so: comments, quotes and all. It may span several lines. */
export class YamlText {
  readonly text: string;

  constructor(text: string) {
    this.text = text.replace(/\r\n?/g, '\n').replace(/\n+$/, '');
  }
}

/** A number with so many decimals at least, as an amount of money has them: `599.50`. */
export function decimal(value: number, decimals: number): Scalar<number> {
  const scalar = new Scalar(value);
  if (!Number.isInteger(value)) scalar.minFractionDigits = decimals;
  return scalar;
}

/** From this length on, a text in a block is folded over several lines. */
const LONG_TEXT = 90;

/** What a value is written like. */
export interface Like {
  style: YamlStyle;
  /** A neighbour of the same kind, whose order of fields, brackets and quotes it takes. */
  neighbour?: Node | null | undefined;
  /** Column at which it will start. */
  column: number;
}

/**
 * A value on one line in brackets: `{ date: 2026-11-02, paid: 849 }`; undefined where that is no line of a page, or where
 * it was typed over several lines.
 */
export function inBrackets(value: unknown, { style, neighbour, column }: Like): string | undefined {
  if (value instanceof YamlText) return value.text.includes('\n') ? undefined : value.text;
  const line = withinBrackets(value, { style, neighbour });
  return line.includes('\n') || line.length + column > LINE_WIDTH ? undefined : line;
}

/** The same, whatever its length: inside brackets there is no other way. */
export function withinBrackets(value: unknown, { style, neighbour }: Omit<Like, 'column'>): string {
  if (value instanceof YamlText) {
    if (value.text.includes('\n')) throw new EditError('A text of several lines can’t stand inside brackets.');
    return value.text;
  }
  return print(value, style, 0, (node) => setOut(node, neighbour, () => true));
}

/** A value over as many lines as it takes, without the indentation that its place gives it. */
export function asBlock(value: unknown, { style, neighbour, column }: Like): string[] {
  if (value instanceof YamlText) return value.text.split('\n');
  return print(value, style, LINE_WIDTH - column, (node) => {
    setOut(
      node,
      neighbour,
      (inner, like) => inner !== node && (isCollection(like) ? Boolean(like.flow) : isFlat(inner)),
    );
  }).split('\n');
}

/** What a value is when it is read: for the check that an edit did what it should. */
export function readBack(value: unknown): unknown {
  const document = new Document(value);
  return document.toJS();
}

/** A block or list of single values goes on one line where it fits. */
function isFlat(node: Node): boolean {
  const written = isCollection(node) ? JSON.stringify(node.toJSON()) : '[[';
  return written.length < LONG_TEXT && !/[[{]/.test(written.slice(1));
}

function print(value: unknown, style: YamlStyle, lineWidth: number, shape: (node: Node) => void): string {
  const document = new Document(value);
  if (document.contents) shape(document.contents);
  const printed = document.toString({
    lineWidth,
    indent: Math.max(1, style.blockIndent),
    indentSeq: style.dashIndent > 0,
    singleQuote: style.singleQuotes,
    flowCollectionPadding: style.padding !== '',
  });
  return withListPadding(printed.replace(/\n$/, ''), style);
}

/** Lists often have no spaces inside their brackets where blocks have some; the printer knows one kind for both. */
function withListPadding(text: string, { padding, listPadding }: YamlStyle): string {
  if (padding === '' || listPadding !== '') return text;
  const cuts: Splice[] = [];
  visit(parseDocument(text), {
    Seq(_key, { flow, range }) {
      if (!flow || !range) return;
      const [start, end] = range;
      if (text[start + 1] === ' ') cuts.push({ start: start + 1, end: start + 2, text: '' });
      if (text[end - 2] === ' ') cuts.push({ start: end - 2, end: end - 1, text: '' });
    },
  });
  return splice(text, cuts);
}

/** Tells whether a block or list goes into brackets, by the one beside it. */
type InFlow = (node: Node, like: Node | null | undefined) => boolean;

/** Order of fields, brackets and quotes of a neighbour; long texts are folded where there is room for lines. */
function setOut(node: Node, like: Node | null | undefined, inFlow: InFlow, isInside = false): void {
  if (isScalar(node)) {
    const quotes = typeof node.value === 'string' ? quotesOf(like) : undefined;
    if (quotes) node.type = quotes;
    else if (!isInside && typeof node.value === 'string' && isLong(node.value)) node.type = Scalar.BLOCK_FOLDED;
    return;
  }
  if (!isCollection(node)) return;
  node.flow = isInside || inFlow(node, like);
  if (!isBlockNode(node)) {
    for (const item of node.items) setOut(item as Node, undefined, inFlow, node.flow);
    return;
  }
  const neighbour = isBlockNode(like) ? like : undefined;
  if (neighbour) order(node, neighbour);
  for (const { key, value } of node.items) {
    if (value) setOut(value, neighbour && pairOf(neighbour, String(key.value))?.value, inFlow, node.flow);
  }
}

const isLong = (text: string) => text.length > LONG_TEXT && !text.includes('\n');

/** Fields that the neighbour has too come in its order; the others keep their places. */
function order(node: { items: Array<{ key: Scalar }> }, neighbour: { items: Array<{ key: Scalar }> }): void {
  const rank = new Map(neighbour.items.map(({ key }, i) => [String(key.value), i]));
  const rankOf = (it: { key: Scalar }) => rank.get(String(it.key.value));
  const shared = node.items
    .filter((it) => rankOf(it) !== undefined)
    .toSorted((a, b) => (rankOf(a) ?? 0) - (rankOf(b) ?? 0));
  let next = 0;
  node.items = node.items.map((it) => (rankOf(it) === undefined ? it : (shared[next++] ?? it)));
}
