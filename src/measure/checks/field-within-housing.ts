import type { Check, Size } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    'field-larger-than-housing': { field: Size; housing: Size };
  }
}

const short = ({ width, height }: Size) => Math.min(width, height);
const long = ({ width, height }: Size) => Math.max(width, height);

/** An LED field larger than the housing around it. */
export const fieldWithinHousing: Check = {
  id: 'field-within-housing',
  run({ field, housing }) {
    if (!field || !housing) return [];
    // Turned on its side, the field may still fit; then the two were noted down in a different order.
    if (short(field) <= short(housing) && long(field) <= long(housing)) return [];
    return [
      {
        severity: 'impossible',
        finding: { code: 'field-larger-than-housing', field, housing },
        concerns: ['led-area', 'field-width', 'field-height'],
        at: ['field'],
      },
    ];
  },
};
