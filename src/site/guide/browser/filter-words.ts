/** The filters of the guide that are on, in words: for a page that follows them and has none of its own. No DOM. */

import { showDate } from '../../../words/format.ts';
import { type FormerNames, type GuideState, type Known, SETS } from './guide-address.ts';

/** What the page calls what can be filtered by, and all that an address may name. */
export interface FilterNames {
  /** A unit behind its number, or a currency's sign before it. */
  ranges: Array<{ name: string; label: string; unit?: string; sign?: string }>;
  sets: Record<(typeof SETS)[number], Array<{ value: string; label: string }>>;
  formerly?: FormerNames;
}

/** What an address may name, for the reading of it. */
export function knownBy({ ranges, sets, formerly }: FilterNames): Known {
  const values = (name: (typeof SETS)[number]) => sets[name].map((it) => it.value);
  return {
    ranges: ranges.map((it) => it.name),
    sets: { class: values('class'), maker: values('maker'), nm: values('nm'), flicker: values('flicker') },
    panels: [],
    ...(formerly && { formerly }),
    tables: [],
    columns: [],
  };
}

/** Each filter that is on, in a few words. */
export function filterWords(state: GuideState, { ranges, sets }: FilterNames): string[] {
  const said = ranges.flatMap(({ name, label, unit = '', sign = '' }) => {
    const { from, to } = state.ranges[name] ?? {};
    if (from === undefined && to === undefined) return [];
    const reach =
      from === undefined
        ? `up to ${sign}${to}`
        : to === undefined
          ? `from ${sign}${from}`
          : `${sign}${from} to ${sign}${to}`;
    return [`${label.toLowerCase()} ${reach} ${unit}`.trim()];
  });
  for (const name of SETS) {
    const labels = (state.sets[name] ?? []).flatMap((it) => sets[name].find(({ value }) => value === it)?.label ?? []);
    // All wavelengths that are asked for, any of the others.
    if (labels.length > 0) said.push(labels.join(name === 'nm' ? ' and ' : ' or '));
  }
  if (state.since) said.push(`tested since ${showDate(state.since)}`);
  if (state.hasHeld) said.push('no checked claim missed');
  return said;
}
