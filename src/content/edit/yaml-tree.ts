import {
  type Document,
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  type Scalar,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import { EditError } from './edit-error.ts';

/** Keys and list positions from the top of the YAML. */
export type YamlPath = ReadonlyArray<string | number>;

/** YAML that was read, with the place of everything in its text. */
export interface YamlTree {
  text: string;
  document: Document.Parsed;
}

/** @throws EditError where the text is no sound YAML */
export function readTree(text: string): YamlTree {
  const document = parseDocument(text, { keepSourceTokens: true, prettyErrors: false, logLevel: 'error' });
  if (document.errors.length > 0) throw new EditError('Its YAML has a fault; `npm run check` says where.');
  return { text, document };
}

/** What stands at a path; undefined where nothing does. Nothing is looked for behind an alias. */
export function nodeAt({ document }: YamlTree, path: YamlPath): Node | undefined {
  let here: unknown = document.contents;
  for (const key of path) {
    if (isMap<Node, Node | null>(here)) here = pairOf(here, key)?.value;
    else if (isSeq(here) && typeof key === 'number') here = here.items[key];
    else return undefined;
  }
  if (isAlias(here)) throw new EditError(`\`${path.join('.')}\` is an alias of another part of the file.`);
  return (here as Node | null) ?? undefined;
}

/** The field of a block by its name. */
export function pairOf(map: YAMLMap<Node, Node | null>, key: string | number): FieldPair | undefined {
  const pair = map.items.find((it) => isScalar(it.key) && String(it.key.value) === String(key));
  return pair as FieldPair | undefined;
}

export type FieldPair = Pair<Scalar & { range: [number, number, number] }, Node | null>;
export type BlockNode = YAMLMap<FieldPair['key'], Node | null>;
export type ListNode = YAMLSeq<Node>;

export const isBlockNode = (node: unknown): node is BlockNode => isMap(node);
export const isListNode = (node: unknown): node is ListNode => isSeq(node);

/** True for a field with nothing after its colon, and for `~` or `null`. */
export const isEmpty = (node: unknown) =>
  node === undefined || node === null || (isScalar(node) && node.value === null);

/** True where nothing at all is written. */
export const isUnwritten = (node: Node | null | undefined) =>
  !node?.range || (isScalar(node) && node.range[0] === node.range[1]);

/** Offset of the start of the line that holds an offset. */
export const lineStart = (text: string, at: number) => text.lastIndexOf('\n', at - 1) + 1;

/** Offset of the end of that line, before its line end. */
export function lineEnd(text: string, at: number): number {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end;
}

/** Offset of the dash of each item of a block list. */
export function dashesOf(list: ListNode): number[] {
  const token = list.srcToken;
  if (token?.type !== 'block-seq') return [];
  return token.items.flatMap((it) => it.start.find(({ type }) => type === 'seq-item-ind')?.offset ?? []);
}

/**
 * Where what is written of a value ends: before the comments and blank lines that follow it.
 *
 * @param start where it starts, for a value that is not written at all
 */
export function contentEnd(text: string, node: Node | FieldPair | null | undefined, start: number): number {
  if (isPair(node)) {
    const { key, value } = node as FieldPair;
    return contentEnd(text, value, key.range[1]);
  }
  if (!node || isUnwritten(node)) return start;
  const [from, to] = node.range ?? [start, start];
  if ((isBlockNode(node) || isListNode(node)) && !node.flow && node.items.length > 0) {
    const dashes = isListNode(node) ? dashesOf(node) : [];
    return contentEnd(text, node.items.at(-1), dashes.at(-1) ?? from);
  }
  if (isScalar(node) && node.type?.startsWith('BLOCK_')) return blockScalarEnd(text, from, to);
  return to;
}

/** A text with `|+` owns the blank lines after it; any other does not. */
function blockScalarEnd(text: string, from: number, to: number): number {
  const written = text.slice(from, to);
  const keeps = (written.split('\n', 1)[0] ?? '').replace(/#.*/, '').includes('+');
  return from + (keeps ? written.replace(/\n$/, '') : written.trimEnd()).length;
}

/**
 * The end of the line on which a value ends, and of the comments below it that are indented further than its own start:
 * they belong to it.
 */
export function ownEnd(text: string, contentEndsAt: number, column: number): number {
  let end = lineEnd(text, contentEndsAt);
  for (;;) {
    const next = /^\n([ \t]+)#[^\n]*/.exec(text.slice(end, lineEnd(text, end + 1)));
    if (!next || (next[1] ?? '').length <= column) return end;
    end += next[0].length;
  }
}
