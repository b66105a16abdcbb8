import type { Loaded } from '../../../ledger/load-ledger.ts';
import { rounded } from '../../../words/rounded.ts';
import { say } from '../../../words/say.ts';
import { type Warning, warningAt } from '../warning.ts';

/** Reasons that other checks tell of. */
const TOLD_ELSEWHERE = new Set(['impossible-as-it-stands', 'range-not-known']);

/** Published panels that no ranking has, or that stand in one apart since their light was read under other conditions. */
export function rankedApart({ content, ledger }: Loaded): Warning[] {
  const { referenceDistance, methodVersion } = ledger.guide;
  return [...ledger.panels.values()].flatMap(({ slug, data, current, rankAbsent }) => {
    const source = content.panels.get(slug)?.source;
    if (!source || data.status !== 'published' || !current) return [];
    const path = ['sessions', data.sessions.findIndex((it) => it.date === current.date)];
    const note = (at: PropertyKey[], text: string) => [
      warningAt(source, at, { severity: 'note', check: 'ranked-apart', text }),
    ];
    if (rankAbsent) {
      return TOLD_ELSEWHERE.has(rankAbsent.code)
        ? []
        : note(path, `The panel stands in no ranking: ${say(rankAbsent)}.`);
    }
    const { distance, methodVersion: version, isReference } = current.conditions;
    if (isReference) return [];
    return note(
      [...path, 'distance'],
      `The light was read at ${rounded(distance)} cm under version ${version} of the bench procedure; the guide’s panels are read at ${rounded(referenceDistance.value)} cm under version ${methodVersion}. This one is ranked apart from them.`,
    );
  });
}
