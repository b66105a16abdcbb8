/**
 * The calculation page without a click: an address opens what it names, paper gets everything, and a lasting address is
 * copied by a button. Without this script a click on a figure's name opens it, and the address is a link.
 */
import { openFolds } from '../../shared/browser/folds.ts';
import { quotation } from './quotation.ts';

const told = document.createElement('span');
told.className = 'unseen';
told.setAttribute('role', 'status');

/** Buttons behind a link that copy where it leads, and what it names as a sentence to quote. */
function addCopy(link: HTMLAnchorElement): void {
  if (link.nextElementSibling instanceof HTMLButtonElement) return;
  const quoted = quotation(link);
  link.after(
    ' ',
    copyButton('Copy', `Copy the address ${link.hash}`, link.href),
    ...(quoted ? [' ', copyButton('Quote', `Copy the figure ${link.hash} with its interval and method`, quoted)] : []),
  );
}

function copyButton(name: string, label: string, text: string): HTMLButtonElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.className = name.toLowerCase();
  button.textContent = name;
  button.setAttribute('aria-label', label);
  button.addEventListener('click', async () => {
    await navigator.clipboard.writeText(text);
    told.textContent = `Copied ${text}`;
    button.textContent = name === 'Copy' ? 'Copied' : 'Quoted';
  });
  return button;
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
