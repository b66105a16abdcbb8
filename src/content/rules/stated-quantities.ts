import { type Field, fields } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import { isBlock } from '../schema/block.ts';
import { INSTRUMENT_KINDS, type InstrumentKind } from '../schema/instrument-kinds.ts';

/** What an instrument's file says of one quantity, wherever in it that stands. */
export interface StatedQuantity {
  kind: InstrumentKind;
  /** The block's own fields at a path of keys, or those beside the blocks, which hold for all that have none. */
  of(...keys: string[]): Field[];
}

/** The quantities that an instrument's file says it reads: one at its top, or a block for each. */
export function statedQuantities(instrument: Source | undefined): StatedQuantity[] {
  const data = instrument?.data;
  if (!isBlock(data)) return [];
  const blocks = fields(data, ['quantities'])[0]?.value;
  if (!isBlock(blocks)) {
    const kind = INSTRUMENT_KINDS.find((it) => it === fields(data, ['measures'])[0]?.value);
    return kind ? [{ kind, of: (...keys) => fields(data, keys) }] : [];
  }
  return INSTRUMENT_KINDS.flatMap((kind): StatedQuantity[] => {
    const block = fields(blocks, [kind])[0]?.value;
    if (!isBlock(block)) return [];
    const path = ['quantities', kind];
    return [
      {
        kind,
        of: (...keys) =>
          Object.hasOwn(block, keys[0] ?? '')
            ? fields(block, keys, path)
            : SHARED.has(keys[0] ?? '')
              ? fields(data, keys)
              : [],
      },
    ];
  });
}

/** What may stand once, beside the blocks. */
const SHARED: ReadonlySet<string> = new Set(['response', 'calibrations']);
