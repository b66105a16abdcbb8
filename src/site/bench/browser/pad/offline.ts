/** Says whether the pad works with the network off, and offers a newer version. */
import { html } from '../../../shared/browser/dom.ts';
import { keepOffline, type OfflineState } from '../bench-offline.ts';
import { find } from '../sheet-form.ts';

const WORDS: Readonly<Record<OfflineState, string>> = {
  none: 'It needs the network when it is opened: this browser keeps no pages, or the address is not a secure one.',
  keeping: 'It is being put on this device, for work without a network.',
  kept: 'It works with the network off.',
  newer: 'A newer version is there.',
  failed: 'It could not be put on this device, and needs the network when it is opened.',
};

/** @param version of the site that the page’s data are from */
export function startOffline(version: string): void {
  const place = find('[data-pad-offline]');
  find('[data-pad-version]').textContent = `Version ${version}.`;
  const offline = keepOffline(version, (state) => {
    const change = html('button', { type: 'button' }, 'Change to it');
    change.addEventListener('click', () => offline.change());
    place.replaceChildren(WORDS[state], ...(state === 'newer' ? [' Readings stay. ', change] : []));
  });
}
