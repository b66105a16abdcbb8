import type { FilterNames } from '../guide/browser/filter-words.ts';
import type { GuideFilterView } from '../guide/guide-filter-view.ts';

/** What the page of plots calls the guide's filters. */
export function filterNames({ ranges, classes, makers, wavelengths, formerly }: GuideFilterView): FilterNames {
  const named = (them: ReadonlyArray<{ id: string; name: string }>) =>
    them.map(({ id, name }) => ({ value: id, label: name }));
  return {
    ...(formerly && { formerly }),
    ranges: ranges.map(({ name, label, unit, isMoney }) => ({ name, label, ...(isMoney ? { sign: unit } : { unit }) })),
    sets: {
      class: named(classes),
      maker: named(makers),
      nm: wavelengths.map((it) => ({ value: String(it), label: `${it} nm` })),
      flicker: [
        { value: 'steady', label: 'flicker at or under the no-effect line' },
        { value: 'faster', label: 'flicker above 3 kHz' },
      ],
    },
  };
}
