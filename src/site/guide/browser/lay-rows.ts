/**
 * On a phone, rows of the ranking that are out of sight are not laid out at first (ranking-block.css). They are once the page
 * is there and has nothing else to do, a few at a time, so that the whole page can be scrolled and copied as a picture.
 */

/** Rows at a time: some 70 ms of a slow phone's processor. */
const FEW = 10;

/** Has all rows laid out that are in the page, without holding anything up. */
export function layRows(table: HTMLTableElement): void {
  const layFew = () => {
    const rows = [...table.querySelectorAll('tr[data-f]:not(.laid)')].slice(0, FEW);
    for (const it of rows) it.classList.add('laid');
    if (rows.length > 0) whenIdle(layFew);
  };
  if (document.readyState === 'complete') whenIdle(layFew);
  else addEventListener('load', () => whenIdle(layFew), { once: true });
}

function whenIdle(act: () => void): void {
  // Not every browser tells when it is idle.
  if ('requestIdleCallback' in globalThis) requestIdleCallback(act);
  else setTimeout(act, 50);
}
