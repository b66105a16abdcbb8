import type { Check } from './check.ts';

export const instrumentNamed: Check = {
  id: 'meter-named',
  guards: 'Readings without a named meter, so that nothing can be said of their uncertainty.',
  run({ instruments }) {
    const unnamed = instruments.filter((it) => it.name === undefined && it.metrics.length > 0);
    if (unnamed.length === 0) return [];
    const concerns = unnamed.flatMap((it) => it.metrics);
    const kinds = unnamed.map((it) => it.kind).join(', ');
    const isRanked = unnamed.some((it) => it.kind === 'irradiance');
    return [
      {
        check: 'meter-named',
        severity: isRanked ? 'doubt' : 'note',
        finding: `The session names no meter for ${kinds}, so that ${concerns.length === 1 ? '1 figure has' : `${concerns.length} figures have`} no uncertainty${isRanked ? ', and the panel is not ranked' : ''}.`,
        hint: `name each under \`instruments\`: ${unnamed.map((it) => `${it.kind}: …`).join(', ')}`,
        concerns,
        at: ['session', 'instruments'],
      },
    ];
  },
};
