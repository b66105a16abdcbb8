/**
 * The calculation page without a click: an address opens what it names, paper gets everything, and a lasting address is
 * copied by a button. Without this script a click on a figure's name opens it, and the address is a link.
 */
import { openFolds } from '../../shared/browser/folds.ts';

const told = document.createElement('span');
told.className = 'unseen';
told.setAttribute('role', 'status');

/** A button behind a link that copies where it leads. */
function addCopy(link: HTMLAnchorElement): void {
  if (link.nextElementSibling instanceof HTMLButtonElement) return;
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'copy';
  button.textContent = 'Copy';
  button.setAttribute('aria-label', `Copy the address ${link.hash}`);
  button.addEventListener('click', async () => {
    await navigator.clipboard.writeText(link.href);
    told.textContent = `Copied ${link.href}`;
    button.textContent = 'Copied';
  });
  link.after(' ', button);
}

openFolds();

if (navigator.clipboard) {
  const main = document.querySelector('main');
  main?.append(told);
  const LINKS = ':scope > p:last-child > a:last-child, :scope > .lines > p > a:first-child';
  const offer = (details: HTMLDetailsElement) => {
    for (const it of details.querySelectorAll<HTMLAnchorElement>(LINKS)) if (it.hash) addCopy(it);
  };
  main?.addEventListener('toggle', ({ target }) => target instanceof HTMLDetailsElement && offer(target), true);
  for (const it of document.querySelectorAll<HTMLDetailsElement>('details[open]')) offer(it);
}
