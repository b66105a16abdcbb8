import type { ListPlace } from './edit.ts';
import { EditError } from './edit-error.ts';
import { asBlock, inBrackets, withinBrackets, YamlText } from './render.ts';
import type { Splice } from './splice.ts';
import type { YamlStyle } from './yaml-style.ts';
import {
  type BlockNode,
  contentEnd,
  dashesOf,
  type ListNode,
  lineEnd,
  lineStart,
  ownEnd,
  type YamlTree,
} from './yaml-tree.ts';

/**
 * Puts an item into a list that has some, laid out as the one beside it.
 *
 * @throws EditError where the list is written in a way that a command can't add to
 */
export function intoList(tree: YamlTree, list: ListNode, item: unknown, place: ListPlace, style: YamlStyle): Splice[] {
  const at = place === 'end' ? list.items.length : Math.min(place, list.items.length);
  return list.flow ? intoBrackets(tree, list, item, at, style) : intoLines(tree, list, item, at, style);
}

/** The lines of a list's items where there is none yet, below the name of its field. */
export function firstItem(item: unknown, column: number, style: YamlStyle): string {
  const dash = column + style.dashIndent;
  if (!(item instanceof YamlText)) return indented(asBlock([item], { style, column: dash }), dash);
  const [first = '', ...rest] = item.text.split('\n');
  return indented([`- ${first}`, ...rest.map((it) => it && `  ${it}`)], dash);
}

function intoLines({ text }: YamlTree, list: ListNode, item: unknown, at: number, style: YamlStyle): Splice[] {
  const dashes = dashesOf(list);
  const neighbour = list.items[Math.max(0, at - 1)];
  const dash = dashes[Math.max(0, at - 1)];
  if (!neighbour || dash === undefined || dashes.length !== list.items.length) {
    throw new EditError('The list has an item that a command can’t read.');
  }
  const column = dash - lineStart(text, dash);
  const gap = Math.max(1, /^ *(?=[^\s#])/.exec(text.slice(dash + 1))?.[0].length ?? 1);
  const [first = '', ...rest] = itemLines(item, neighbour, column + 1 + gap, style);
  const lines = indented([`-${' '.repeat(gap)}${first}`, ...rest.map((it) => it && ' '.repeat(1 + gap) + it)], column);
  const between = isSpaced(text, list, dashes) ? '\n' : '';
  if (at > 0) {
    const end = ownEnd(text, contentEnd(text, neighbour, dash + 1), column);
    return [{ start: end, end, text: `\n${between}${lines}` }];
  }
  // The first item of a list that starts on the line of another one.
  if (text.slice(lineStart(text, dash), dash).trim() !== '') {
    return [{ start: dash, end: dash, text: `${lines.slice(column)}\n${between}${' '.repeat(column)}` }];
  }
  const start = commentsAbove(text, lineStart(text, dash));
  return [{ start, end: start, text: `${lines}\n${between}` }];
}

/**
 * Puts another item in the place of one of a list that stands over lines.
 *
 * @throws EditError where it does not, or there is no such item
 */
export function otherListItem(
  { text }: YamlTree,
  list: ListNode,
  item: unknown,
  at: number,
  style: YamlStyle,
): Splice[] {
  const [old, dash] = [list.items[at], dashesOf(list)[at]];
  if (list.flow || !old || dash === undefined) throw new EditError('The list has no such item on lines of its own.');
  const column = dash - lineStart(text, dash);
  const gap = Math.max(1, /^ *(?=[^\s#])/.exec(text.slice(dash + 1))?.[0].length ?? 1);
  const [first = '', ...rest] = itemLines(item, old, column + 1 + gap, style);
  const end = ownEnd(text, contentEnd(text, old, dash + 1), column);
  return [
    { start: dash + 1 + gap, end, text: [first, indented(rest, column + 1 + gap)].join(rest.length > 0 ? '\n' : '') },
  ];
}

function intoBrackets({ text }: YamlTree, list: ListNode, item: unknown, at: number, style: YamlStyle): Splice[] {
  const neighbour = list.items[Math.max(0, at - 1)];
  const [start, end] = neighbour?.range ?? [0, 0];
  const written = withinBrackets(item, { style, neighbour });
  const own = lineStart(text, start);
  const stands = text.slice(own, start).trim() === '';
  if (at === 0) return [{ start, end: start, text: `${written},${stands ? `\n${text.slice(own, start)}` : ' '}` }];
  if (!stands) return [{ start: end, end, text: `, ${written}` }];
  // Each item on a line of its own: so does the new one, below the comment of the one before it.
  const comma = /^\s*,/.exec(text.slice(end))?.[0];
  const after = end + (comma?.length ?? 0);
  const rest = text.slice(after, lineEnd(text, after));
  if (rest.trim() !== '' && !/^\s+#/.test(rest)) return [{ start: end, end, text: `, ${written}` }];
  const line = `\n${text.slice(own, start)}${written}`;
  const below = lineEnd(text, after);
  if (comma) return [{ start: below, end: below, text: `${line},` }];
  return below === end
    ? [{ start: end, end, text: `,${line}` }]
    : [
        { start: end, end, text: ',' },
        { start: below, end: below, text: line },
      ];
}

function itemLines(item: unknown, neighbour: ListNode['items'][number] | undefined, column: number, style: YamlStyle) {
  const isInBrackets = (neighbour as Partial<BlockNode> | undefined)?.flow ?? false;
  const line = isInBrackets ? inBrackets(item, { style, neighbour, column }) : undefined;
  // A neighbour in brackets tells nothing of how a block is laid out inside.
  return line === undefined ? asBlock(item, { style, neighbour, column }) : [line];
}

function indented(lines: readonly string[], by: number): string {
  return lines.map((it) => it && ' '.repeat(by) + it).join('\n');
}

/** True where most items of a list have a blank line above them, above their comments. */
function isSpaced(text: string, list: ListNode, dashes: readonly number[]): boolean {
  const spaced = dashes.slice(1).filter((dash) => {
    const start = commentsAbove(text, lineStart(text, dash));
    return /\n[ \t]*\n$/.test(text.slice(0, start));
  });
  return list.items.length > 1 && spaced.length * 2 > list.items.length - 1;
}

/** Start of the comments that stand straight above a line: they are of what follows. */
function commentsAbove(text: string, line: number): number {
  let start = line;
  while (start > 0) {
    const above = lineStart(text, start - 1);
    if (!/^[ \t]*#/.test(text.slice(above, start))) break;
    start = above;
  }
  return start;
}
