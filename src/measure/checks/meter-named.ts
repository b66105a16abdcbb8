import type { Check } from './check.ts';

declare module '../statement.ts' {
  interface StatementData {
    /** Kinds of instruments, how many figures have no uncertainty for it, and whether the panel can be ranked. */
    'instruments-not-named': { kinds: string[]; figures: number; isRanked: boolean };
    'name-instruments': { kinds: string[] };
  }
}

/** Readings without a named instrument, so that nothing can be said of their uncertainty. */
export const meterNamed: Check = {
  id: 'meter-named',
  run({ instruments }) {
    const unnamed = instruments.filter((it) => it.name === undefined && it.metrics.length > 0);
    if (unnamed.length === 0) return [];
    const concerns = unnamed.flatMap((it) => it.metrics);
    const kinds = unnamed.map((it) => it.kind);
    const isRanked = !kinds.includes('irradiance');
    return [
      {
        severity: isRanked ? 'note' : 'doubt',
        finding: { code: 'instruments-not-named', kinds, figures: concerns.length, isRanked },
        hint: { code: 'name-instruments', kinds },
        concerns,
        at: ['session', 'instruments'],
      },
    ];
  },
};
