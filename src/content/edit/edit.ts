import type { YamlPath } from './yaml-tree.ts';

/** Where in a list an item goes: at its end, or before the item that has this place now. */
export type ListPlace = 'end' | number;

/**
 * One change of a file's YAML. Values are plain data, nodes of the library `yaml` (`decimal`), or `YamlText`, which is put
 * in as it was typed.
 */
export type Edit =
  /** Puts an item into a list, in the style of the one beside it; a list that is not there is begun. */
  | { do: 'insert'; list: YamlPath; item: unknown; at?: ListPlace; order?: readonly string[] }
  /** Puts an item in the place of one of a list, with the comments that stand within that one. */
  | { do: 'replace'; list: YamlPath; at: number; item: unknown }
  /** Gives a field, or an item of a list, another single value. */
  | { do: 'set'; field: YamlPath; value: unknown }
  /** Adds a field to a block: after the nearest one of those that come before it in `order`, or at the end. */
  | { do: 'add'; field: YamlPath; value: unknown; order?: readonly string[] }
  /** Takes a field out of a block. */
  | { do: 'remove'; field: YamlPath };
