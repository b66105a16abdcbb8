import { isCollection, isScalar, type Node } from 'yaml';
import { EditError } from './edit-error.ts';
import { asBlock, inBrackets, withinBrackets, YamlText } from './render.ts';
import type { Splice } from './splice.ts';
import { columnOf, type YamlStyle } from './yaml-style.ts';
import {
  type BlockNode,
  contentEnd,
  type FieldPair,
  isUnwritten,
  lineEnd,
  lineStart,
  ownEnd,
  pairOf,
  type YamlTree,
} from './yaml-tree.ts';

/** A scalar's text replaced; quotes stay where it had some. */
export function otherScalar({ text }: YamlTree, pair: FieldPair, value: unknown, style: YamlStyle): Splice[] {
  const { key, value: old } = pair;
  if (isCollection(old)) throw new EditError(`\`${key.value}\` is a block or a list; one value can’t take its place.`);
  const written = withinBrackets(value, { style, neighbour: old });
  if (isUnwritten(old)) {
    const colon = text.indexOf(':', key.range[1]);
    return [{ start: colon + 1, end: colon + 1, text: ` ${written}` }];
  }
  return [scalarSplice(text, old, written)];
}

/** The same for an item of a list. */
export function otherItem({ text }: YamlTree, old: Node, value: unknown, style: YamlStyle): Splice[] {
  if (!isScalar(old) || isUnwritten(old)) throw new EditError('One value can’t take the place of this item.');
  return [scalarSplice(text, old, withinBrackets(value, { style, neighbour: old }))];
}

function scalarSplice(text: string, old: Node | null, written: string): Splice {
  const [start, end] = old?.range ?? [0, 0];
  // A folded text ends with its line's end, which stays.
  const isFolded = isScalar(old) && old.type?.startsWith('BLOCK_');
  return { start, end: isFolded ? contentEnd(text, old, start) : end, text: written };
}

/**
 * A new field in a block.
 *
 * @param order names of fields in the order in which they usually come; the new one goes after the nearest one before it
 */
export function newField(
  tree: YamlTree,
  block: BlockNode,
  field: { key: string; value: unknown },
  order: readonly string[],
  style: YamlStyle,
): Splice[] {
  const before = placeAfter(block, field.key, order);
  return block.flow ? fieldInBrackets(block, field, before, style) : fieldOnLines(tree, block, field, before, style);
}

/** The field after which a new one goes; undefined for the start of the block. */
function placeAfter(block: BlockNode, key: string, order: readonly string[]): FieldPair | undefined {
  const at = order.indexOf(key);
  const last = block.items.at(-1) as FieldPair | undefined;
  if (at < 0) return last;
  const earlier = order.slice(0, at).toReversed();
  const nearest = earlier.map((it) => pairOf(block, it)).find((it) => it !== undefined);
  if (nearest) return nearest;
  return order.slice(at + 1).some((it) => pairOf(block, it)) ? undefined : last;
}

function fieldInBrackets(
  block: BlockNode,
  { key, value }: { key: string; value: unknown },
  before: FieldPair | undefined,
  style: YamlStyle,
): Splice[] {
  const written = `${key}: ${withinBrackets(value, { style })}`;
  const [first] = block.items as FieldPair[];
  if (!first) {
    const [start, end] = block.range ?? [0, 0];
    return [{ start, end, text: `{${style.padding}${written}${style.padding}}` }];
  }
  const at = before ? (before.value?.range?.[1] ?? before.key.range[1]) : first.key.range[0];
  return [{ start: at, end: at, text: before ? `, ${written}` : `${written}, ` }];
}

function fieldOnLines(
  { text }: YamlTree,
  block: BlockNode,
  { key, value }: { key: string; value: unknown },
  before: FieldPair | undefined,
  style: YamlStyle,
): Splice[] {
  const column = columnOf(text, block) ?? 0;
  const lines = fieldLines(key, value, column, style);
  const margin = ' '.repeat(column);
  if (!before) {
    const start = block.items[0]?.key.range[0] ?? 0;
    return [
      { start, end: start, text: `${lines.map((it, i) => (i > 0 && it ? margin + it : it)).join('\n')}\n${margin}` },
    ];
  }
  const end = ownEnd(text, contentEnd(text, before, before.key.range[1]), column);
  const blank = lines.length > 1 && isSetApart(text, block, before, end) ? '\n' : '';
  return [{ start: end, end, text: `\n${blank}${lines.map((it) => it && margin + it).join('\n')}` }];
}

/** True where a field's neighbours stand apart from it by a blank line, as the parts of a file do. */
function isSetApart(text: string, block: BlockNode, field: FieldPair, end: number): boolean {
  if (/^\n[ \t]*\n/.test(text.slice(end, end + 200))) return true;
  const isLast = block.items.at(-1)?.key === field.key;
  return isLast && /\n[ \t]*\n[^\n]*$/.test(text.slice(0, lineStart(text, field.key.range[0]) + 1));
}

/** A field with its name, over as many lines as it takes. */
export function fieldLines(key: string, value: unknown, column: number, style: YamlStyle): string[] {
  if (value instanceof YamlText) {
    const lines = value.text.split('\n');
    if (lines.length === 1 && !/^(- |#)/.test(value.text)) return [`${key}: ${value.text}`];
    const by = ' '.repeat(/^- /m.test(value.text) ? style.dashIndent : style.blockIndent);
    return [`${key}:`, ...lines.map((it) => it && by + it)];
  }
  const isList = Array.isArray(value);
  const line = isList ? undefined : inBrackets(value, { style, column: column + key.length + 2 });
  return line === undefined ? asBlock({ [key]: value }, { style, column }) : [`${key}: ${line}`];
}

/**
 * A field taken out, with the comment on its line and those below it that are indented further.
 *
 * @throws EditError for the only field of a block
 */
export function withoutField({ text }: YamlTree, block: BlockNode, pair: FieldPair): Splice[] {
  const items = block.items as FieldPair[];
  const at = items.indexOf(pair);
  const [before, after] = [items[at - 1], items[at + 1]];
  if (!before && !after) throw new EditError(`\`${pair.key.value}\` is the only field of its block.`);
  const start = pair.key.range[0];
  if (block.flow) {
    return before
      ? [{ start: before.value?.range?.[1] ?? before.key.range[1], end: contentEnd(text, pair, start), text: '' }]
      : [{ start, end: after?.key.range[0] ?? start, text: '' }];
  }
  const line = lineStart(text, start);
  // The first field of an item shares its line with the dash; the next one takes its place.
  if (!before && text.slice(line, start).trim() !== '') return [{ start, end: after?.key.range[0] ?? start, text: '' }];
  const end = ownEnd(text, contentEnd(text, pair, pair.key.range[1]), start - line);
  return end < text.length
    ? [{ start: line, end: end + 1, text: '' }]
    : [{ start: Math.max(0, line - 1), end, text: '' }];
}

/** Where a field's own line ends, for what goes below it. */
export const fieldLineEnd = (text: string, pair: FieldPair) => lineEnd(text, pair.key.range[1]);
