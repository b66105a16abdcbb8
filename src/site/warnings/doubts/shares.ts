import { fields } from '../../../content/read/fields.ts';
import { SHARES, sharesOf } from '../../../content/rules/shares-in-percent.ts';
import type { Loaded } from '../../../ledger/load-ledger.ts';
import { rounded } from '../../../words/rounded.ts';
import { type Warning, warningAt } from '../warning.ts';

/** How far a sum of shares may be from 100 %, for rounding on a label. Our own choice. */
export const ROUNDING = 5;

/** Shares of a whole that do not add up to it. */
export function sharesAddUp({ content }: Loaded): Warning[] {
  return [...content.panels.values()].flatMap(({ source }) =>
    SHARES.flatMap((keys) =>
      fields(source.data, keys).flatMap((list) => {
        const shares = sharesOf(list);
        const sum = shares?.reduce((total, { percent }) => total + percent, 0);
        if (sum === undefined || Math.abs(sum - 100) <= ROUNDING) return [];
        return [
          warningAt(source, list.path, {
            severity: 'doubt',
            check: 'shares-add-up',
            text: `The shares of ${keys.join('.')} add up to ${rounded(sum, 4)} %, not to 100 %.`,
            hint: 'if the maker prints it so, say it in the notes; otherwise one was mistyped or left out',
          }),
        ];
      }),
    ),
  );
}
