import type { SpectrumAnalysis } from './analysis.ts';
import { areaOver } from './spectrum.ts';

/** Rows before the end that tell how much light is left there, nm. */
const END = 20;
/** LEDs' tails fall to 1/e within no more than so much, nm: a wide near-infrared LED's, with room. Our own choice. */
const LONGEST_FALL = 50;
/** A panel's hottest parts that face the sensor, kelvin: 100 °C, at which lenses would soften. Our own choice, the cautious end. */
export const HOTTEST = 373.15;
/** Stefan-Boltzmann constant, W/(m² K⁴), and second radiation constant, µm K (CODATA 2018, from memory). */
const STEFAN_BOLTZMANN = 5.670374419e-8;
const SECOND_RADIATION = 14387.7688;
/** W/m² in mW/cm². */
const PER_CM = 0.1;

/**
 * Share of a black body's radiation up to a wavelength: 15/pi^4 sum of e^(-nv)/n (v^3 + 3v²/n + 6v/n² + 6/n³), v = c2/(lT)
 * (Planck's law, integrated term by term). Not for v under about 0.2, where the sum converges slowly.
 *
 * @param um wavelength, µm
 * @param kelvin temperature
 */
export function planckShare(um: number, kelvin: number): number {
  const v = SECOND_RADIATION / (um * kelvin);
  let sum = 0;
  for (let n = 1; n <= 200; n++) {
    const term = (Math.exp(-n * v) / n) * (v ** 3 + (3 * v ** 2) / n + (6 * v) / n ** 2 + 6 / n ** 3);
    sum += term;
    if (term < 1e-12 * sum) break;
  }
  return (15 / Math.PI ** 4) * sum;
}

/**
 * The most that a panel's light may add between the end of an instrument's range and 3000 nm, mW/cm²: what is left of its LEDs'
 * tails at the end (its level there and twice its noise, falling to 1/e within 50 nm), and heat of a black surface of
 * 100 °C that fills the view. LEDs whose light lies beyond the range altogether are not bounded by this.
 */
export function mostBeyond({ spectrum, reach, dark }: SpectrumAnalysis, to: number): number {
  if (reach.to >= to) return 0;
  const from = Math.max(reach.from, reach.to - END);
  const level = reach.to > from ? areaOver(spectrum, { from, to: reach.to }) / (reach.to - from) : 0;
  const rows = Math.max(1, (END * spectrum.wavelengths.length) / (reach.to - reach.from));
  const tail = LONGEST_FALL * (Math.max(0, level) + 2 * Math.hypot(dark.noise / Math.sqrt(rows), dark.offsetError));
  const heat =
    STEFAN_BOLTZMANN * HOTTEST ** 4 * (planckShare(to / 1000, HOTTEST) - planckShare(reach.to / 1000, HOTTEST));
  return tail + heat * PER_CM;
}
