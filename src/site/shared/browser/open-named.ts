/** Opens what an address names, where it is folded, and opens all that is folded for paper. */

/** Opens the element that the address names, and what it lies in or heads. */
function openNamed(): void {
  const named = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  let isOpened = false;
  for (let it = named?.closest('details'); it; it = it.parentElement?.closest('details')) {
    isOpened ||= !it.open;
    it.open = true;
  }
  if (isOpened) named?.scrollIntoView();
}

addEventListener('hashchange', openNamed);
openNamed();

let forPaper: HTMLDetailsElement[] = [];
addEventListener('beforeprint', () => {
  forPaper = [...document.querySelectorAll<HTMLDetailsElement>('main details:not([open])')];
  for (const it of forPaper) it.open = true;
});
addEventListener('afterprint', () => {
  for (const it of forPaper) it.open = false;
});

export {};
