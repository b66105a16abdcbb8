import { type Html, html, piecesHtml } from '../shared/html.ts';
import { carriedHtml, shownHtml } from '../shared/shown-html.ts';
import type { ChannelRow } from './channels-view.ts';
import type { FieldsView } from './fields-view.ts';
import { wavelengthAxis } from './wavelength-axis.ts';

/**
 * A line of the table by channel.
 *
 * @param peaks wavelengths, nm, that are drawn where a line has no figure
 */
export function channelHtml({ name, unit, carried, absent, cells }: ChannelRow, peaks: readonly number[]): Html {
  return html`<tr> <th scope="row">${name}, ${unit}${carriedHtml(carried)}${absent && html`<small>${carried ? ', ' : ' '}${absent}</small>`}</th> ${cells.map(
    ({ figure, under }) =>
      figure
        ? html`<td>${shownHtml(figure)}${under && html`<small> ${shownHtml(under)}</small>`}</td>`
        : html`<td class="drawn">${piecesHtml([wavelengthAxis(peaks)])}</td>`,
  )} </tr>`;
}

/** A line of the table of fields and sound. */
export function fieldHtml({ name, place, carried, off, on, frequency }: FieldsView['rows'][number]): Html {
  return html`<tr><th scope="row">${name}, <span>${place}</span>${carriedHtml(carried)}</th><td>${shownHtml(off)}</td><td>${shownHtml(on)}${frequency && html`<small> at ${shownHtml(frequency)}</small>`}</td></tr>`;
}

/** A line of a table of plain texts. */
export const textsHtml = (head: string, cells: readonly string[]): Html =>
  html`<tr><th scope="row">${head}</th>${cells.map((text) => html`<td>${text}</td>`)}</tr>`;
