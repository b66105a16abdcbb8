import type { Statement } from '../statement.ts';
import { checkField, type Emitter, type Field, type LedEmitter } from './emitter.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** The LEDs as somebody counted them, of a size that was measured too or is assumed. */
    'beam-leds-counted': { columns: number; rows: number; staggered: boolean; isSizeAssumed: boolean };
    /** A grid that goes with the number that the maker claims. */
    'beam-taken-for-grid': { columns: number; rows: number };
    /** Nobody knows how many LEDs there are. */
    'beam-taken-for-even-field': object;
    /** So many LEDs as the maker claims make no regular grid in this field. */
    'beam-no-regular-grid': { count: number };
  }
}

/** An emitter and how far its light may really reach further out or less far, cm either way. */
export interface AssumedEmitter {
  emitter: Emitter;
  /** Half-width of a rectangular distribution, cm. */
  edge: number;
  /** What was assumed, as a note beside the figures. */
  note: Statement;
}

/**
 * Half of the usual gap between neighbouring LEDs, cm, and how far it may be off: gaps from none to 3.6 cm. Our
 * own choice, for panels whose LEDs are not counted.
 */
export const USUAL_HALF_GAP = 0.9;

/** Pitches across and down may differ by this factor; otherwise the count is taken to be of another layout. */
const OBLONG = 1.35;

/** Half-width of the doubt about how far the light reaches past the field's edges where the LEDs are known, cm: our own choice. */
const KNOWN_EDGE = 0.1;

/** LEDs as somebody counted them; their size where it was measured too. */
export type CountedLeds = Omit<LedEmitter, 'kind' | 'ledSize'> & { ledSize?: number };

/**
 * The emitter of a panel whose LEDs were counted. Where their size is not known, each is taken to be half as wide as
 * its pitch, give or take that half: our own choice.
 */
export function countedEmitter(field: Field, { ledSize, ...leds }: CountedLeds): AssumedEmitter {
  checkField(field);
  const { columns, rows, staggered = false } = leds;
  const note = (isSizeAssumed: boolean): Statement => ({
    code: 'beam-leds-counted',
    columns,
    rows,
    staggered,
    isSizeAssumed,
  });
  if (ledSize !== undefined) {
    return { emitter: { kind: 'leds', ledSize, ...leds }, edge: KNOWN_EDGE, note: note(false) };
  }
  const pitch = pitchOf(field, leds);
  return {
    emitter: { kind: 'leds', ledSize: pitch / 2, ...leds },
    edge: pitch / 4,
    note: note(true),
  };
}

/** Width = (columns - 1) pitch + LED, with an LED of half a pitch; the smaller of the pitches across and down, cm. */
function pitchOf(field: Field, { columns, rows }: { columns: number; rows: number }): number {
  return Math.min(field.width / (columns - 0.5), field.height / (rows - 0.5));
}

/**
 * What to take a panel for when at most the number of its LEDs is known: a grid whose pitch is nearest to the same
 * both ways, each LED half as wide as its pitch, give or take that half; without a count, or with one that no such
 * grid has, a continuous field. Our own choice.
 *
 * @param count of LEDs, not of dies in them
 */
export function assumedEmitter(field: Field, count: number | undefined): AssumedEmitter {
  checkField(field);
  let best: { columns: number; rows: number; oblong: number } | undefined;
  for (let columns = 1; count !== undefined && columns <= count; columns++) {
    if (count % columns !== 0) continue;
    const rows = count / columns;
    const oblong = Math.abs(Math.log((field.width * (rows - 0.5)) / (field.height * (columns - 0.5))));
    if (!best || oblong < best.oblong) best = { columns, rows, oblong };
  }
  if (best && best.oblong <= Math.log(OBLONG) && Math.min(best.columns, best.rows) > 1) {
    const pitch = pitchOf(field, best);
    return {
      emitter: { kind: 'leds', columns: best.columns, rows: best.rows, ledSize: pitch / 2 },
      edge: pitch / 4,
      note: { code: 'beam-taken-for-grid', columns: best.columns, rows: best.rows },
    };
  }
  return {
    emitter: { kind: 'continuous', beyond: USUAL_HALF_GAP },
    edge: USUAL_HALF_GAP,
    note: count === undefined ? { code: 'beam-taken-for-even-field' } : { code: 'beam-no-regular-grid', count },
  };
}
