import { curly } from '../../content/schema/curly.ts';
import { type Html, html } from '../shared/html.ts';
import type { BeyondDrawing, BeyondView } from './beyond-view.ts';

/** The readings past the edges on the calculation page: the table, and where they were taken. */
export function beyondHtml({ anchor, rows, drawing }: BeyondView, date: string): Html {
  return html`<h3 id="${anchor}">Past the edges</h3>
<p>Past the edges of the LED field, in the plane of the grid. The room’s light, panel off, is taken away. <a href="/methods/bench-procedure/">How they are taken.</a></p>
<div class="raw"><div class="sheet" role="group" aria-label="Readings past the edges, ${date}" tabindex="0"><table>
<thead><tr><th scope="col">Place</th><th scope="col">Panel on</th><th scope="col">Panel off</th></tr></thead>
<tbody>${rows.map(
    (row) =>
      html`<tr><th scope="row">${row.place}</th><td>${row.on.map(
        ({ written, rejected }, i) =>
          html`${i > 0 && '; '}${rejected ? html`<s>${written}</s><small> struck out: ${curly(rejected)}</small>` : written}`,
      )}</td><td>${row.off}</td></tr>`,
  )}</tbody></table></div>
${drawing && drawingHtml(drawing)}</div>`;
}

function drawingHtml(it: BeyondDrawing): Html {
  const { housing } = it;
  return html`<figure><svg class="field" viewBox="${it.viewBox}" width="${it.pixelWidth}" height="${it.pixelHeight}" font-size="${it.typeSize}" aria-hidden="true">${
    housing &&
    html`<rect class="housing" x="${housing.x}" y="${housing.y}" width="${housing.width}" height="${housing.height}"/>`
  }<rect class="leds" x="0" y="0" width="${it.width}" height="${it.height}"/>${it.rules.map(
    ({ x1, y1, x2, y2 }) => html`<line class="rule" x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>`,
  )}${it.places.map(
    (place) =>
      html`<circle${place.isRejected && html` class="rejected"`} cx="${place.x}" cy="${place.y}" r="${it.radius}"/><text x="${place.textX}" y="${place.textY}">${place.text}</text>`,
  )}</svg><figcaption class="small soft">${it.description}.</figcaption></figure>`;
}
