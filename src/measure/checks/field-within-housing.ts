import type { Check, Size } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    'field-larger-than-housing': { field: Size; housing: Size };
    'field-turned-in-housing': { field: Size; housing: Size };
    'width-before-height': object;
  }
}

const short = ({ width, height }: Size) => Math.min(width, height);
const long = ({ width, height }: Size) => Math.max(width, height);

/** An LED field larger than the housing around it, or across where the housing is upright. */
export const fieldWithinHousing: Check = {
  id: 'field-within-housing',
  run({ field, housing }) {
    if (!field || !housing) return [];
    if (field.width <= housing.width && field.height <= housing.height) return [];
    // Turned on its side it fits: the two were noted down in a different order, or one panel stood and then lay.
    if (short(field) <= short(housing) && long(field) <= long(housing)) {
      return [
        {
          severity: 'note',
          finding: { code: 'field-turned-in-housing', field, housing },
          hint: { code: 'width-before-height' },
          concerns: ['field-width', 'field-height'],
          at: ['field'],
        },
      ];
    }
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
