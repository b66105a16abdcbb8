import type { Loaded } from '../../../ledger/load-ledger.ts';
import { type Warning, warningAt } from '../warning.ts';

/**
 * A meter that was calibrated between two readings of its check standard, without new limits: whether it was adjusted then,
 * so that a step is to be expected, the tester alone knows.
 */
export function standardsRecalibrated({ content, ledger }: Loaded): Warning[] {
  return ledger.standards.flatMap(({ id, data, calibrated, days, instrument }) => {
    const source = content.standards.get(id)?.source;
    if (!source) return [];
    return calibrated.flatMap((day) => {
      const before = days.findLast((it) => it.date < day)?.date ?? day;
      const next = days.find((it) => it.date >= day)?.date ?? day;
      if (data.restarts.some((it) => it.date > before && it.date <= next)) return [];
      return [
        warningAt(source, ['readings', data.readings.findIndex((it) => it.date === next)], {
          severity: 'note',
          check: 'standard-recalibrated',
          text: `The ${instrument.name} was calibrated on ${day}, and the limits of its check standard go on as before. If it was adjusted, a step there is no fault.`,
          hint: `if it was adjusted, restart the limits: restarts: [{ date: ${next}, reason: … }]`,
        }),
      ];
    });
  });
}
