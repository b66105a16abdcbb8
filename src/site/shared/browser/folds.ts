/** What is folded on a page opens by its address, and on paper. */

let isWatching = false;

/** Opens what the address names, now and whenever it changes, and for paper everything but what is printed as it was left. */
export function openFolds(): void {
  if (isWatching) return;
  isWatching = true;
  addEventListener('hashchange', openNamed);
  openNamed();
  let forPaper: HTMLDetailsElement[] = [];
  addEventListener('beforeprint', () => {
    forPaper = [...document.querySelectorAll<HTMLDetailsElement>('main details:not([open], .as-left details)')];
    for (const it of forPaper) it.open = true;
  });
  addEventListener('afterprint', () => {
    for (const it of forPaper) it.open = false;
  });
}

/** Opens the element that the address names, and what it lies in. */
function openNamed(): void {
  const named = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const closed = folds(named);
  if (!named || closed.length === 0) return;
  for (const it of closed) it.open = true;
  show(named);
}

/** What tells that a reader has taken the page in hand. */
const BY_HAND = ['wheel', 'touchmove', 'keydown', 'pointerdown'];

/**
 * Scrolls to an element at once: a smooth scroll would end where the element was before lines above it broke anew, with
 * the typefaces there. Once they are, and the browser has gone to the address by itself, it scrolls there again, unless
 * somebody has scrolled on by then.
 */
function show(named: Element): void {
  named.scrollIntoView({ behavior: 'instant' });
  const later = new AbortController();
  for (const it of BY_HAND) addEventListener(it, () => later.abort(), { passive: true, signal: later.signal });
  const isLoaded = document.readyState === 'complete' || new Promise((done) => addEventListener('load', done));
  void Promise.all([document.fonts.ready, isLoaded]).then(() =>
    requestAnimationFrame(() => {
      if (!later.signal.aborted) named.scrollIntoView({ behavior: 'instant' });
      later.abort();
    }),
  );
}

/** What is closed of all that an element lies in, or is, or heads. */
function folds(from: Element | null): HTMLDetailsElement[] {
  const closed: HTMLDetailsElement[] = [];
  for (let it = from?.closest('details'); it; it = it.parentElement?.closest('details')) if (!it.open) closed.push(it);
  return closed;
}
