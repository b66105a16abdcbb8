import { parse } from 'yaml';
import { isBlock } from '../schema/block.ts';
import type { Edit } from './edit.ts';
import { readBack, YamlText } from './render.ts';
import type { YamlPath } from './yaml-tree.ts';

/** The data that a file should hold after an edit: what an edit's text is held against. */
export function expected(before: unknown, edit: Edit): unknown {
  switch (edit.do) {
    case 'insert':
      return changed(before, edit.list, (list) => {
        const items: unknown[] = Array.isArray(list) ? list : [];
        const at = edit.at === undefined || edit.at === 'end' ? items.length : edit.at;
        return items.toSpliced(at, 0, dataOf(edit.item));
      });
    case 'replace':
      return changed(before, edit.list, (list) =>
        Array.isArray(list) ? list.map((it, i) => (i === edit.at ? dataOf(edit.item) : it)) : list,
      );
    case 'set':
    case 'add':
      return changed(before, edit.field, () => dataOf(edit.value));
    case 'remove':
      return changed(before, edit.field.slice(0, -1), (block) =>
        Object.fromEntries(Object.entries(block ?? {}).filter(([key]) => key !== String(edit.field.at(-1)))),
      );
  }
}

function changed(data: unknown, path: YamlPath, change: (old: unknown) => unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return change(data);
  if (Array.isArray(data)) return data.map((it, i) => (i === key ? changed(it, rest, change) : it));
  const block = isBlock(data) ? data : {};
  return { ...block, [key]: changed(block[key], rest, change) };
}

/** What a value is when it is read. */
function dataOf(value: unknown): unknown {
  return value instanceof YamlText ? parse(value.text) : readBack(value);
}
