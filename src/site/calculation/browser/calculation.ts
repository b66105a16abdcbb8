/**
 * The calculation page without a click: an address opens what it names, paper gets everything, and a lasting address is
 * a link that a button copies. Without this script a click on a figure's name opens it, and its address stands beside it.
 */
import { html } from '../../shared/browser/dom.ts';
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

/** The figure's lasting address as a link at the end of what is told of it, once it is open. */
function lastingLink(details: HTMLDetailsElement): HTMLAnchorElement | undefined {
  const id = details.querySelector(':scope > summary')?.id || details.id;
  const last = details.querySelector(':scope > p:last-child');
  if (id === '' || !last) return undefined;
  const known = last.querySelector<HTMLAnchorElement>(':scope > a.lasting');
  if (known) return known;
  const link = html('a', { class: 'lasting', href: `#${id}` }, 'address');
  last.append(' ', link);
  return link;
}

const canCopy = navigator.clipboard !== undefined;
const main = document.querySelector('main');
if (canCopy) main?.append(told);
const offer = (details: HTMLDetailsElement) => {
  const older = details.querySelectorAll<HTMLAnchorElement>(':scope > .lines > p > a:first-child');
  for (const it of [lastingLink(details), ...older]) if (it?.hash && canCopy) addCopy(it);
};
main?.addEventListener('toggle', ({ target }) => target instanceof HTMLDetailsElement && offer(target), true);
for (const it of document.querySelectorAll<HTMLDetailsElement>('details[open]')) offer(it);
