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

/**
 * Scrolls to an element at once: a smooth scroll would end where the element was before lines above it broke anew, with
 * the typefaces there. Who has scrolled on by then is left where they are.
 */
function show(named: Element): void {
  named.scrollIntoView({ behavior: 'instant' });
  const at = scrollY;
  void document.fonts.ready.then(() => {
    if (scrollY === at) named.scrollIntoView({ behavior: 'instant' });
  });
}

/** What is closed of all that an element lies in, or is, or heads. */
function folds(from: Element | null): HTMLDetailsElement[] {
  const closed: HTMLDetailsElement[] = [];
  for (let it = from?.closest('details'); it; it = it.parentElement?.closest('details')) if (!it.open) closed.push(it);
  return closed;
}
