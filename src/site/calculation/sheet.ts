import { type Html, html } from '../shared/html.ts';

/** A table that scrolls by itself where it is too wide, also by keyboard. */
export const sheet = (label: string, table: Html): Html =>
  html`<div class="sheet" role="group" aria-label="${label}" tabindex="0"><table>${table}</table></div>`;
