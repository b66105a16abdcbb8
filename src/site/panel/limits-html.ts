import { type Html, html, piecesHtml } from '../shared/html.ts';
import { carriedHtml, lengthHtml, shownHtml } from '../shared/shown-html.ts';
import type { LimitRow, Place } from './limit-rows.ts';
import type { Unheld } from './limits-view.ts';
import { shareBar } from './share-bar.ts';

/** A line of the table of limits: a string, since a page has a dozen, with several figures each. */
export function limitHtml({ id, name, place, carried, read, limit, share, words, figures }: LimitRow): Html {
  const [figure, ...behind] = figures;
  return html`<tr${id !== undefined && html` id="${id}"`}> <th scope="row">${name}${place && html`, <span>${placeHtml(place)}</span>`}${carriedHtml(carried)}</th> <td${!read.figure && html` class="soft"`}>${read.figure && shownHtml(read.figure)}${read.text && `${read.figure ? ' ' : ''}${read.text}`}</td> <td${!limit && html` class="none soft"`}>${limit ? limitCellHtml(limit) : 'none held against it'}</td> <td>${share ? piecesHtml([shareBar(share)]) : words && html`<span class="soft">${words}</span>`}</td> <td>${figure && shownHtml(figure)}${behind.map((it) => html`<small> ${shownHtml(it)}${it.behind && ` ${it.behind}`}</small>`)}</td> </tr>`;
}

/** Where something was read: in the reader's unit of length, or as the tester wrote it. */
const placeHtml = (at: Place) => ('cm' in at ? lengthHtml(at.cm) : at.written);

function limitCellHtml({ text, other, note, by }: NonNullable<LimitRow['limit']>): Html {
  const remarks = [note, by].filter((it) => it);
  return html`${other ? html`<span data-u="µT">${text}</span><span data-u="mG" hidden> ${other}</span>` : text}${remarks.length > 0 && html`<small> ${remarks.join(', ')}</small>`}`;
}

/** What has no share, and why; with the addresses that have nothing else to stand on. */
export const unheldHtml = ({ ids: [id, ...others], what, reason }: Unheld): Html =>
  html`<span${id !== undefined && html` id="${id}"`}>${others.map((it) => html`<span id="${it}"></span>`)}<b>${what}:</b> ${reason}.</span> `;
