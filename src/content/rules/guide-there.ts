import type { Rule } from './rule.ts';

/** The one file that every guide has; all others may be missing, or come with the product. */
export const guideThere: Rule = {
  id: 'guide-there',
  run: ({ guide }, { shownAs, unread }) => {
    const file = `${shownAs}/guide.yaml`;
    if (guide.size > 0 || unread.has(file)) return [];
    const wanted = 'the file with title, currency, tariff and size classes';
    return [
      { file, field: '', found: 'no such file', wanted, hint: 'start writes one: npm run ledger -- start --help' },
    ];
  },
};
