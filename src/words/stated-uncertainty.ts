import type { StatedUncertainty } from '../measure/instrument/instrument.ts';

/** "4 % and 0.2 W at k = 2": what a calibration promises, as it was stated. */
export function statedUncertainty({ relative, absolute, unit, coverageFactor }: StatedUncertainty): string {
  const parts = [relative > 0 && `${relative} %`, absolute > 0 && `${absolute} ${unit}`].filter(Boolean);
  return parts.length > 0 ? `${parts.join(' and ')} at k = ${coverageFactor}` : 'none stated';
}
