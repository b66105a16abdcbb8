/**
 * A number in a working, as a person would write it: at most `digits` significant digits, no exponent in the
 * usual range, no trailing zeros. Values on pages are rounded by their uncertainty instead (words/format.ts).
 */
export function number(value: number, digits = 4): string {
  const rounded = Number(value.toPrecision(digits));
  return (rounded === 0 ? 0 : rounded).toString().replace('-', '−');
}
