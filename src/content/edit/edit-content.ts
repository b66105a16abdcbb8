import isEqual from 'fast-deep-equal';
import { fieldLineEnd, fieldLines, newField, otherItem, otherScalar, withoutField } from './block-edits.ts';
import { openContent } from './content-text.ts';
import type { Edit } from './edit.ts';
import { EditError } from './edit-error.ts';
import { expected } from './expected.ts';
import { firstItem, intoList, otherListItem } from './list-edits.ts';
import { withinBrackets, YamlText } from './render.ts';
import { type Splice, splice } from './splice.ts';
import { columnOf, styleOf, type YamlStyle } from './yaml-style.ts';
import {
  type BlockNode,
  isBlockNode,
  isEmpty,
  isListNode,
  isUnwritten,
  nodeAt,
  pairOf,
  readTree,
  type YamlPath,
  type YamlTree,
} from './yaml-tree.ts';

/**
 * Edits a content file's text one change after another: comments, order, quotes, blank lines, line ends and all that an
 * edit does not speak of stay as they are, byte by byte. What comes out is read again, and holds what it should, or
 * nothing comes out.
 *
 * @param raw the file's text as it lies on the disk
 * @param file its name: in what ends with `.yaml` all is YAML, in other files the front matter
 * @throws EditError where the file can't be read, or is written in a way that a command can't change
 *
 * @example
 * editContent('prices:\n  - { date: 2026-10-09, paid: 999 }   # seen\n', 'panel.yaml', [
 *   { do: 'insert', list: ['prices'], item: { date: '2026-11-18', paid: 849 } },
 * ]); // 'prices:\n  - { date: 2026-10-09, paid: 999 }   # seen\n  - { date: 2026-11-18, paid: 849 }\n'
 */
export function editContent(raw: string, file: string, edits: readonly Edit[]): string {
  return edits.reduce((text, edit) => {
    const content = openContent(text, file);
    try {
      const tree = readTree(content.yaml);
      const splices = splicesOf(tree, edit, styleOf(tree));
      verify(tree, edit, splice(content.yaml, splices));
      return content.with(splices);
    } catch (error) {
      if (!(error instanceof EditError)) throw error;
      throw new EditError(`${file}: ${error.message} Nothing was changed.`);
    }
  }, raw);
}

function splicesOf(tree: YamlTree, edit: Edit, style: YamlStyle): Splice[] {
  switch (edit.do) {
    case 'insert':
      return insert(tree, edit, style);
    case 'replace': {
      const list = nodeAt(tree, edit.list);
      if (!isListNode(list)) throw new EditError(`\`${edit.list.join('.')}\` is no list.`);
      return otherListItem(tree, list, edit.item, edit.at, style);
    }
    case 'set': {
      const old = nodeAt(tree, edit.field);
      const { block, key } = around(tree, edit.field);
      const pair = block && pairOf(block, key);
      if (pair) return otherScalar(tree, pair, edit.value, style);
      if (!old) throw new EditError(`There is no field \`${edit.field.join('.')}\`.`);
      return otherItem(tree, old, edit.value, style);
    }
    case 'add': {
      const { block, key } = around(tree, edit.field);
      if (!block) return intoNothing(tree, edit, style);
      if (pairOf(block, key)) throw new EditError(`\`${edit.field.join('.')}\` is there already.`);
      return newField(tree, block, { key: String(key), value: edit.value }, edit.order ?? [], style);
    }
    case 'remove': {
      const { block, key } = around(tree, edit.field);
      const pair = block && pairOf(block, key);
      if (!block || !pair) throw new EditError(`There is no field \`${edit.field.join('.')}\`.`);
      return withoutField(tree, block, pair);
    }
  }
}

function insert(tree: YamlTree, edit: Edit & { do: 'insert' }, style: YamlStyle): Splice[] {
  const { list: path, item, at = 'end', order } = edit;
  const list = nodeAt(tree, path);
  if (isListNode(list) && list.items.length > 0) return intoList(tree, list, item, at, style);
  const { block, key } = around(tree, path);
  const pair = block && pairOf(block, key);
  if (!pair) {
    const value = item instanceof YamlText ? new YamlText(firstItem(item, 0, { ...style, dashIndent: 0 })) : [item];
    return splicesOf(tree, { do: 'add', field: path, value, ...(order && { order }) }, style);
  }
  const isEmptyList = isListNode(list) && list.items.length === 0;
  if (!isEmptyList && !isEmpty(list)) throw new EditError(`\`${path.join('.')}\` is no list.`);
  const [start, end] = list?.range ?? [0, 0];
  if (block.flow) {
    const { listPadding } = style;
    const written = `[${listPadding}${withinBrackets(item, { style })}${listPadding}]`;
    return isUnwritten(list) ? otherScalar(tree, pair, [item], style) : [{ start, end, text: written }];
  }
  const below = fieldLineEnd(tree.text, pair);
  const lines = `\n${firstItem(item, columnOf(tree.text, block) ?? 0, style)}`;
  // `[]` and `~` go, with the space before them.
  const gone = isUnwritten(list) ? [] : [{ start: start - 1, end, text: '' }];
  if (end > below) throw new EditError(`\`${path.join('.')}\` is an empty list over several lines.`);
  return [...gone, { start: below, end: below, text: lines }];
}

/** The block that a path's last key is in, and that key. */
function around(tree: YamlTree, path: YamlPath): { block: BlockNode | undefined; key: string | number } {
  const key = path.at(-1);
  if (key === undefined) throw new EditError('The whole file is no field.');
  const parent = nodeAt(tree, path.slice(0, -1));
  return { block: isBlockNode(parent) ? parent : undefined, key };
}

/** A field of a block that is not written yet, or of an empty file. */
function intoNothing(tree: YamlTree, { field, value }: Edit & { do: 'add' }, style: YamlStyle): Splice[] {
  const key = String(field.at(-1));
  if (field.length > 1 || !isEmpty(tree.document.contents)) {
    const { block, key: name } = around(tree, field.slice(0, -1));
    const pair = block && pairOf(block, name);
    if (!pair || block.flow || !isUnwritten(pair.value)) {
      throw new EditError(`There is no block \`${field.slice(0, -1).join('.')}\`.`);
    }
    const column = (columnOf(tree.text, block) ?? 0) + style.blockIndent;
    const lines = fieldLines(key, value, column, style).map((it) => it && ' '.repeat(column) + it);
    const end = fieldLineEnd(tree.text, pair);
    return [{ start: end, end, text: `\n${lines.join('\n')}` }];
  }
  const end = tree.text.length;
  const gap = end > 0 && !tree.text.endsWith('\n') ? '\n' : '';
  return [{ start: end, end, text: `${gap}${fieldLines(key, value, 0, style).join('\n')}` }];
}

/** What comes out holds what the edit says, and all that was there. */
function verify(tree: YamlTree, edit: Edit, after: string): void {
  const wanted = expected(tree.document.toJS(), edit);
  let found: unknown;
  try {
    found = readTree(after).document.toJS();
  } catch {
    found = undefined;
  }
  if (isEqual(found, wanted)) return;
  const path = 'list' in edit ? edit.list : edit.field;
  throw new EditError(`\`${path.join('.')}\` is written in a way that a command can’t change; change it by hand.`);
}
