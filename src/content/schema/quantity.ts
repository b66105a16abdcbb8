import { ownField } from './block.ts';
import { fractionIn, numberHint } from './number-words.ts';
import { nearest } from './suggest.ts';
import { acceptedUnit, QUANTITIES, type QuantityKind, type QuantityName, quantityOfUnit } from './units.ts';

/** A value as the tester wrote it, in the canonical unit of its quantity. */
export interface Reading {
  /** In the canonical unit of the quantity (units.ts). */
  value: number;
  /** The canonical unit. */
  unit: string;
  /** `<0.1 uT` and `>2000 Hz` are bounds; they stay bounds through every calculation. */
  bound?: 'below' | 'above';
  /** As written, with the documented unit added to a bare number. */
  written: string;
}

/** What is wrong with a written quantity, in the terms of an error message. */
export interface QuantityFault {
  wanted: string;
  hint?: string;
}

export interface QuantityLimits {
  /** Lowest and highest accepted value in the canonical unit; a value outside is absurd, not merely odd. */
  min?: number;
  max?: number;
  /** Zero is refused too. */
  positive?: boolean;
  /** `<x` and `>x` are accepted; with 'below', `<x` alone. */
  bounds?: boolean | 'below';
}

/** Longest text that is read. */
export const LONGEST = 80;
const SHAPE = /^(?<bound>[<>])?\s*(?<number>[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?)\s*(?<unit>.*)$/i;

/** What a field of this quantity takes, in words. */
export function wantedQuantity(name: QuantityName): string {
  const { typed } = QUANTITIES[name];
  const units = Object.keys(QUANTITIES[name].units).filter((unit) => unit !== typed);
  const others = units.length > 0 ? `, or a text with one of: ${[typed, ...units].join(', ')}` : '';
  return `${QUANTITIES[name].name}: a number in ${typed}${others}`;
}

/**
 * Reads a quantity: a number in the documented unit, or a text such as `6 in`, `410 W/m2`, `<0.1 uT`.
 * Returns the reading in the canonical unit, or what is wrong with it and what to write instead.
 */
export function parseQuantity(
  input: number | string,
  name: QuantityName,
  limits: QuantityLimits = {},
): { reading: Reading } | { fault: QuantityFault } {
  const kind = QUANTITIES[name];
  let reading: Reading;

  if (typeof input === 'number') {
    if (!Number.isFinite(input)) return { fault: { wanted: wantedQuantity(name) } };
    reading = { value: input, unit: kind.canonical, written: `${input} ${kind.canonical}` };
  } else {
    // No quantity is that long; a match over a long text would take its time to fail.
    const text = input.length > LONGEST ? '' : input.trim();
    const fraction = fractionIn(text);
    const match = SHAPE.exec(fraction ? `${fraction.number} ${fraction.unit}` : text);
    const hint = numberHint(text);
    if (!match?.groups || hint) return { fault: { wanted: wantedQuantity(name), ...(hint && { hint }) } };
    const unitWritten = match.groups.unit ?? '';
    if (unitWritten.startsWith(',')) {
      const pointed = input.trim().replace(',', '.');
      const readable = 'reading' in parseQuantity(pointed, name, { bounds: true });
      return {
        fault: {
          wanted: wantedQuantity(name),
          ...(readable && { hint: `write the decimals after a point: ${pointed}` }),
        },
      };
    }
    const { units }: QuantityKind = kind;
    const unit = acceptedUnit(unitWritten, units) || kind.typed;
    const conversion = ownField(units, unit);
    if (!conversion) {
      const other = quantityOfUnit(unit, name);
      const near = nearest(unit, Object.keys(units));
      return {
        fault: {
          wanted: wantedQuantity(name),
          ...(other
            ? { hint: `"${unitWritten.trim()}" is a unit of ${QUANTITIES[other].name}, not of ${kind.name}` }
            : near && { hint: `did you mean "${match.groups.bound ?? ''}${match.groups.number} ${near}"?` }),
        },
      };
    }
    reading = {
      unit: kind.canonical,
      value: tidy(Number(match.groups.number) * conversion.factor + (conversion.offset ?? 0)),
      written: unitWritten ? input.trim() : `${input.trim()} ${kind.canonical}`,
    };
    if (match.groups.bound) {
      if (!limits.bounds) {
        return {
          fault: {
            wanted: `${kind.name} with one value; a bound ("${match.groups.bound}") can't be calculated with here`,
          },
        };
      }
      reading.bound = match.groups.bound === '<' ? 'below' : 'above';
    }
  }

  if (!Number.isFinite(reading.value)) return { fault: { wanted: wantedQuantity(name) } };
  const { min, max, positive } = limits;
  if (positive && reading.value <= 0) return { fault: { wanted: `${kind.name} above 0 ${kind.canonical}` } };
  if (min !== undefined && reading.value < min) {
    return { fault: { wanted: `${kind.name} of at least ${min} ${kind.canonical}` } };
  }
  if (max !== undefined && reading.value > max) {
    return { fault: { wanted: `${kind.name} of at most ${max} ${kind.canonical}; more is absurd here` } };
  }
  return { reading };
}

/** Takes the binary dust off a conversion (0.1 * 3 = 0.30000000000000004), well below any reading's resolution. */
function tidy(value: number): number {
  return Number(value.toPrecision(14));
}
