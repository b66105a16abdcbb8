/** Rows that are picked for the comparison: a box in each, and the way there once there are two. */

import { html } from '../../shared/browser/dom.ts';
import { inSite } from '../../shared/browser/site-path.ts';

export interface RowPicks {
  /** Puts boxes into rows that are about to be shown. */
  addTo(rows: readonly number[]): void;
}

/**
 * @param bar has the address of a comparison less the panels, and how many it takes
 * @param slugOf a row's panel
 * @param nearOf rows that one is most likely to be held against
 */
export function rowPicks(
  bar: HTMLElement,
  rows: readonly HTMLTableRowElement[],
  slugOf: (row: number) => string,
  nameOf: (row: number) => string,
  nearOf: (row: number) => readonly number[],
): RowPicks {
  const boxes = new Map<number, HTMLInputElement>();
  const most = Number(bar.dataset.most);
  const picked = () => [...boxes].filter(([, box]) => box.checked).map(([row]) => row);
  const clear = html('button', { type: 'button' }, 'Clear');
  const addressOf = (those: readonly number[]) =>
    `${bar.dataset.compare}${those.map((it) => encodeURIComponent(slugOf(it))).join(',')}`;
  const link = html('a', {});
  const words = html('span', { role: 'status' });
  const near = html('span', {});
  bar.append(words, ' ', near, link, ' ', clear);
  const show = () => {
    const those = picked();
    bar.hidden = those.length === 0;
    link.hidden = those.length < 2;
    link.textContent = `Compare the ${those.length} picked`;
    link.href = inSite(addressOf(those));
    const [only] = those;
    const offered = those.length === 1 && only !== undefined ? nearOf(only) : [];
    near.replaceChildren(
      ...offered.flatMap((it) => ['with the ', html('a', { href: addressOf([...those, it]) }, nameOf(it)), ', ']),
      offered.length > 0 ? 'or pick another.' : '',
    );
    words.textContent = those.length >= most ? 'No more than these.' : those.length === 1 ? oneWords(only) : '';
    // A full comparison takes no more; those that are in it can be taken out.
    for (const box of boxes.values()) box.disabled = those.length >= most && !box.checked;
  };
  const oneWords = (row: number | undefined) =>
    row !== undefined && nearOf(row).length > 0 ? `Compare the ${nameOf(row)}` : '1 picked; pick another to compare.';
  clear.addEventListener('click', () => {
    const first = picked()[0];
    for (const box of boxes.values()) box.checked = false;
    show();
    if (first !== undefined) boxes.get(first)?.focus();
  });
  return {
    addTo(those) {
      const isFull = picked().length >= most;
      for (const row of those) {
        if (boxes.has(row)) continue;
        const box = html('input', { type: 'checkbox', 'aria-label': `Compare ${nameOf(row)}`, disabled: isFull });
        box.addEventListener('change', show);
        boxes.set(row, box);
        rows[row]?.querySelector('th')?.append(html('label', { class: 'pick' }, box, ' compare'));
      }
    },
  };
}
