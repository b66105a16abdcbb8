/**
 * The calculation page without a click: an address opens what it names, paper gets everything, and a lasting address is
 * put behind it with a button that copies it. Without this script a click on a figure's name opens it, and the page's
 * head says how addresses are made.
 */
import { openFolds } from '../../shared/browser/folds.ts';
import { quotation } from './quotation.ts';

const told = document.createElement('span');
told.className = 'unseen';
told.setAttribute('role', 'status');

/** A figure's lasting address behind its account: the id of its name, or its own where that is no other. */
function addAddress(figure: HTMLDetailsElement): void {
  const account = figure.querySelector(':scope > p:last-child');
  const id = figure.querySelector('summary')?.id || figure.id;
  if (!account || id === '' || account.querySelector('a.address')) return;
  const link = document.createElement('a');
  link.className = 'address';
  link.href = `#${id}`;
  link.textContent = 'Address';
  account.append(' ', link);
  if (navigator.clipboard) addCopy(link);
}

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

const main = document.querySelector('main');
main?.append(told);
const offer = (details: HTMLDetailsElement) => {
  if (details.matches('.by > *, main > [id]:not([class])')) addAddress(details);
  if (!navigator.clipboard) return;
  for (const it of details.querySelectorAll<HTMLAnchorElement>(':scope > .lines > p > a:first-child')) addCopy(it);
};
main?.addEventListener('toggle', ({ target }) => target instanceof HTMLDetailsElement && offer(target), true);
for (const it of document.querySelectorAll<HTMLDetailsElement>('main details[open]')) offer(it);
