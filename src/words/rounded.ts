/**
 * A number as it stands within a sentence: at most three significant digits, or as many as are asked for, and no
 * trailing zeros. Figures are rounded by their uncertainty instead (format.ts).
 */
export function rounded(value: number, digits = 3): string {
  return Number(value.toPrecision(digits)).toString();
}
