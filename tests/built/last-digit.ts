/** Half of the last digit that a printed number shows: `12.5` to 0.05; its interval leaves no more. */
export function halfLastDigit(text: string): number {
  const [, decimals = ''] = /^[\d,]+(?:\.(\d+))?/.exec(text) ?? [];
  return 0.5 * 10 ** -decimals.length;
}
