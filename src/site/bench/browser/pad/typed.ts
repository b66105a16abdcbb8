/** What is typed at a place, as the content file will have it. No DOM. */
import { parseQuantity, type Reading } from '../../../../content/schema/quantity.ts';
import { acceptedUnit, QUANTITIES, type QuantityKind } from '../../../../content/schema/units.ts';
import { withPoint } from '../decimal-point.ts';
import type { Place } from './places.ts';

export type Typed = { written: string; reading: Reading } | { fault: string };

/** Units in which a place can be read, that of the file first; spellings of one unit stand once. */
export function unitsOf({ quantity }: Pick<Place, 'quantity'>): string[] {
  const { typed, units }: QuantityKind = QUANTITIES[quantity];
  const seen = new Set<string>();
  return [typed, ...Object.keys(units)].filter((unit) => {
    const { factor, offset = 0 } = units[unit] ?? { factor: 0 };
    const key = `${factor} ${offset}`;
    return !seen.has(key) && seen.add(key);
  });
}

/** A bare number of a time is in seconds in the file; on a bench it is minutes. */
export const usualUnit = ({ quantity }: Pick<Place, 'quantity'>): string =>
  quantity === 'time' ? 'min' : QUANTITIES[quantity].typed;

/**
 * A reading as it was typed: a number in the unit that the meter shows, or one with its own unit.
 *
 * @param unit that the meter shows
 */
export function readTyped(text: string, place: Pick<Place, 'quantity' | 'bounds'>, unit: string): Typed {
  const kind: QuantityKind = QUANTITIES[place.quantity];
  const plain = withPoint(text.trim());
  const hasUnit = /[a-zµμ°%"]\S*$/i.test(plain.replace(/e[+-]?\d+$/i, ''));
  const asked = hasUnit || unit === kind.typed ? plain : `${plain} ${unit}`;
  const parsed = parseQuantity(asked, place.quantity, { bounds: place.bounds });
  if ('fault' in parsed) {
    const { wanted, hint } = parsed.fault;
    return { fault: `“${text.trim()}” is not ${wanted}${hint ? `: ${hint}` : ''}.` };
  }
  return { written: shortest(asked, kind), reading: parsed.reading };
}

/** Without a unit that the field has of itself. */
function shortest(text: string, { typed, units }: QuantityKind): string {
  const match = /^([<>]?\s*[+-]?[\d.]+(?:e[+-]?\d+)?)\s+(\D.*)$/i.exec(text);
  return match && acceptedUnit(match[2] ?? '', units) === typed ? (match[1] ?? text) : text;
}
