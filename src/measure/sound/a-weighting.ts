/** Corner frequencies of the A-weighting, Hz (IEC 61672-1:2013, from public implementations that quote it). */
const [F1, F2, F3, F4] = [20.598997, 107.65265, 737.86223, 12194.217];

/** Share of the pressure that is left, before it is made 1 at 1 kHz. */
function response(frequency: number): number {
  const square = frequency * frequency;
  return (
    (F4 ** 2 * square ** 2) /
    ((square + F1 ** 2) * Math.sqrt((square + F2 ** 2) * (square + F3 ** 2)) * (square + F4 ** 2))
  );
}

const AT_1_KHZ = response(1000);

/**
 * A-weighting of a frequency in Hz, as a factor of mean square pressure (IEC 61672-1:2013, Table 3 and its equations,
 * seen in secondary sources).
 */
export function aWeight(frequency: number): number {
  return (response(frequency) / AT_1_KHZ) ** 2;
}

/**
 * The same in dB.
 *
 * @example aWeighting(1000) // 0
 */
export function aWeighting(frequency: number): number {
  return 10 * Math.log10(aWeight(frequency));
}
