import { counted } from '../../../content/read/problem-list.ts';
import type { Gap } from '../../../content/read/source.ts';
import { fieldPath } from '../../../content/schema/problem.ts';
import type { Loaded } from '../../../ledger/load-ledger.ts';
import type { Warning } from '../warning.ts';

/** What drafts and unfinished instruments still lack, a note for each part of a file. */
export function stillToFillIn({ content }: Loaded): Warning[] {
  return content.unfinished.flatMap(({ file, unfinished }) =>
    [...Map.groupBy(unfinished?.gaps ?? [], ({ path }) => fieldPath(partOf(path)))].flatMap(([part, inIt]) => {
      const [first] = inIt;
      if (!first) return [];
      const text = `${counted(inIt.length, 'value')} still to be filled in, ${lines(inIt)}${named(inIt)}.`;
      return [{ severity: 'note', check: 'to-fill-in', file, line: first.line, field: part, text, figures: [] }];
    }),
  );
}

/** A field of the file, or one entry of a list: prices[0]. */
const partOf = (path: Gap['path']) => path.slice(0, typeof path[1] === 'number' ? 2 : 1);

/** The fields in it that have gaps: `date, peak, grid`; none where the part itself is the gap. */
function named(gaps: readonly Gap[]): string {
  const names = gaps.flatMap(({ path }) => {
    const name = path.slice(partOf(path).length).find((it) => typeof it === 'string');
    return name === undefined ? [] : [String(name)];
  });
  return names.length > 0 ? `: ${[...new Set(names)].join(', ')}` : '';
}

function lines(gaps: readonly Gap[]): string {
  const all = gaps.map((it) => it.line);
  const [from, to] = [Math.min(...all), Math.max(...all)];
  return from === to ? `line ${from}` : `lines ${from} to ${to}`;
}
