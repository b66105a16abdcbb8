import { type Check, words } from './check.ts';

export const fieldWithinHousing: Check = {
  id: 'field-within-housing',
  guards: 'An LED field larger than the housing around it.',
  run({ field, housing }) {
    if (!field || !housing) return [];
    // Turned on its side, the field may still fit; then the two were noted down in a different order.
    const short = (it: { width: number; height: number }) => Math.min(it.width, it.height);
    const long = (it: { width: number; height: number }) => Math.max(it.width, it.height);
    if (short(field) <= short(housing) && long(field) <= long(housing)) return [];
    const size = (it: { width: number; height: number }) => `${words(it.width)} × ${words(it.height)} cm`;
    return [
      {
        check: 'field-within-housing',
        severity: 'impossible',
        finding: `The LED field, ${size(field)}, does not fit into the housing, ${size(housing)}. One of the two was measured or typed wrongly.`,
        concerns: ['led-area', 'field-width', 'field-height'],
        at: ['field'],
      },
    ];
  },
};
