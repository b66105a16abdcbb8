import { isMap, isScalar, isSeq, type Node, Scalar, visit } from 'yaml';
import { type BlockNode, dashesOf, isBlockNode, lineStart, type YamlTree } from './yaml-tree.ts';

/** How the hand that wrote a file sets things out. */
export interface YamlStyle {
  /** Spaces inside `{ }`. */
  padding: string;
  /** Spaces inside `[ ]`. */
  listPadding: string;
  singleQuotes: boolean;
  /** How much further a list's dashes stand than the name of its field. */
  dashIndent: number;
  /** The same for a block of fields. */
  blockIndent: number;
}

/** Longest line that a command writes, in characters; what is longer is laid out over several. */
export const LINE_WIDTH = 120;

/** The style of a file, from all that it holds; where it shows none, that of the demonstration. */
export function styleOf({ text, document }: YamlTree): YamlStyle {
  const seen = { padding: [] as string[], listPadding: [] as string[], quotes: [] as string[] };
  const indents = { dash: [] as number[], block: [] as number[] };
  visit(document, (_key, node, parents) => {
    if (isScalar(node) && (node.type === Scalar.QUOTE_SINGLE || node.type === Scalar.QUOTE_DOUBLE)) {
      seen.quotes.push(node.type);
    }
    if ((isMap(node) || isSeq(node)) && node.flow && node.items.length > 0 && node.range) {
      const inside = /^ *(?=[^\s#])/.exec(text.slice(node.range[0] + 1))?.[0];
      if (inside !== undefined) (isMap(node) ? seen.padding : seen.listPadding).push(inside);
    }
    const block = parents.findLast(isBlockNode);
    const isValue = parents.at(-1) !== block && !isSeq(parents.at(-1));
    if (!block || block.flow || !isValue) return;
    const from = columnOf(text, block);
    if (from === undefined) return;
    if (isSeq(node) && !node.flow && node.items.length > 0) {
      const [dash] = dashesOf(node as never);
      if (dash !== undefined) indents.dash.push(dash - lineStart(text, dash) - from);
    }
    if (isBlockNode(node) && !node.flow) indents.block.push((columnOf(text, node) ?? from + 2) - from);
  });
  return {
    padding: mostOf(seen.padding, ' '),
    listPadding: mostOf(seen.listPadding, ''),
    singleQuotes: mostOf(seen.quotes, Scalar.QUOTE_DOUBLE) === Scalar.QUOTE_SINGLE,
    dashIndent: mostOf(indents.dash, 2),
    blockIndent: mostOf(indents.block, 2),
  };
}

/** Column, from 0, of a block's fields. */
export function columnOf(text: string, block: BlockNode): number | undefined {
  const start = block.items[0]?.key.range[0];
  return start === undefined ? undefined : start - lineStart(text, start);
}

/** What a scalar of the same name has beside it in the list: its quotes, if any. */
export function quotesOf(node: Node | null | undefined): Scalar.Type | undefined {
  if (!isScalar(node)) return undefined;
  return node.type === Scalar.QUOTE_SINGLE || node.type === Scalar.QUOTE_DOUBLE ? node.type : undefined;
}

function mostOf<T>(seen: readonly T[], otherwise: T): T {
  const counts = Map.groupBy(seen, (it) => it);
  return [...counts].toSorted((a, b) => b[1].length - a[1].length)[0]?.[0] ?? otherwise;
}
