import type { Rule } from './rule.ts';

/** The two files that every guide has. */
export const guideAndCautions: Rule = {
  id: 'guide-and-cautions',
  run: ({ guide, cautions }, { shownAs, unread }) =>
    (
      [
        [guide, 'guide.yaml', 'the file with title, currency, tariff and size classes'],
        [cautions, 'cautions.mdx', 'the page of cautions'],
      ] as const
    ).flatMap(([entries, name, wanted]) => {
      const file = `${shownAs}/${name}`;
      return entries.size > 0 || unread.has(file) ? [] : [{ file, field: '', found: 'no such file', wanted }];
    }),
};
