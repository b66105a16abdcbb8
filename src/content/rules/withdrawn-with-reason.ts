import { fields, problemAt, texts } from '../read/fields.ts';
import type { Rule } from './rule.ts';

/** Whoever finds a panel withdrawn is told why. */
export const withdrawnWithReason: Rule = {
  id: 'withdrawn-with-reason',
  run: ({ panels }) =>
    [...panels.values()].flatMap((panel) => {
      const isWithdrawn = texts(panel, 'status').some(({ value }) => value === 'withdrawn');
      const hasReason = fields(panel.data, ['statusReason']).some(({ value }) => value !== null && value !== '');
      if (!isWithdrawn || hasReason) return [];
      return [problemAt(panel, { path: ['statusReason'], value: undefined }, 'the reason for the withdrawal')];
    }),
};
