import { type Check, words } from './check.ts';

/** LEDs lie no farther apart, and no closer, than this, cm, on average. Our own choice: panels have 1 to 5. */
export const LARGEST_PITCH = 10;
export const SMALLEST_PITCH = 0.4;
/** Longest side of a field, cm: higher than any door. Our own choice. */
export const LONGEST_SIDE = 250;
/** Smallest share of the housing's area that the field takes up. Our own choice: frames are a hand wide at most. */
export const SMALLEST_SHARE = 0.25;

export const fieldSize: Check = {
  id: 'field-size',
  guards:
    'An LED field whose size does not go with its LEDs or its housing, such as millimetres or inches typed as centimetres.',
  run({ field, housing, ledCount }) {
    if (!field) return [];
    const size = `${words(field.width)} × ${words(field.height)} cm`;
    const area = field.width * field.height;
    const flag = (text: string, unit: string) => [
      {
        check: 'field-size',
        severity: 'doubt' as const,
        finding: text,
        hint: `a bare number is in centimetres: if it was read in ${unit}, write \`${Number(field.width.toPrecision(6))} ${unit}\``,
        concerns: ['led-area', 'optical-power'],
        at: ['field'],
      },
    ];
    if (ledCount !== undefined) {
      const pitch = Math.sqrt(area / ledCount);
      const apart = `The ${ledCount} LEDs in a field of ${size} lie ${words(pitch)} cm apart on average`;
      if (pitch > LARGEST_PITCH) return flag(`${apart}; in panels it is seldom more than ${LARGEST_PITCH} cm.`, 'mm');
      if (pitch < SMALLEST_PITCH) return flag(`${apart}; in panels it is seldom less than ${SMALLEST_PITCH} cm.`, 'in');
    }
    if (Math.max(field.width, field.height) > LONGEST_SIDE)
      return flag(`An LED field of ${size} is longer than ${LONGEST_SIDE} cm: higher than a door.`, 'mm');
    const share = housing && area / (housing.width * housing.height);
    if (share !== undefined && share < SMALLEST_SHARE)
      return flag(
        `The LED field, ${size}, takes up ${words(100 * share)} % of the housing's area; it is seldom less than ${words(100 * SMALLEST_SHARE)} %.`,
        'in',
      );
    return [];
  },
};
