import type { Guide } from '../../content/schema/guide.ts';
import type { PanelEntry } from '../../ledger/ledger.ts';
import { withdrawnSessions } from '../addresses/withdrawn.ts';
import { citationText, workingCitation } from '../cite/citation.ts';
import { type Html, html } from '../shared/html.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { type Calculation, calculationView, looseCalculation, type SessionCalculation } from './calculation-view.ts';
import type { InstrumentRow } from './error-sources.ts';
import { GROUPS, groupOf } from './figure-groups.ts';
import {
  distancesHtml,
  figureHtml,
  flagHtml,
  gapsHtml,
  methodHtml,
  olderFigureHtml,
  toldElsewhereHtml,
} from './figure-html.ts';
import { readingsHtml } from './readings-html.ts';
import { sheet } from './sheet.ts';
import { withdrawnHtml } from './withdrawn-html.ts';

/**
 * What a panel's calculation page holds below the site's head: every reading, and how each figure follows from them. As
 * markup, since these pages are many of the guide's bytes, with hundreds of cells each.
 */
export function calculationHtml(
  panel: PanelEntry,
  guide: Pick<Guide, 'currency' | 'withdrawn' | 'title' | 'publisher' | 'site'>,
): string {
  const { currency } = guide;
  const [current, ...older] = calculationView(panel, currency);
  const address = panelAddress(panel.slug);
  return html`<p class="trail"><a href="/">Guide</a> › <a href="${address}">${panel.name}</a></p>
<h1>${panel.name}<span class="unseen">:</span> <small>every reading, every step</small></h1>
<p>Under each figure: its formula with its numbers, which lead to their own; behind ±, the parts of its interval, in % of the figure where it says so; its lasting address.
<a href="/methods/uncertainty/">How uncertainty is worked out</a>, <a href="/data/panels.json">all figures as data</a>, <a href="${address}#limits">beside published limits</a>, and the <a href="/cautions/">cautions</a> to read before you act on any.</p>
${panel.flags.length > 0 && html`<h2 id="flags">Flags</h2>\n<ul>${panel.flags.map((it) => html`<li>${flagHtml(it)}</li>`)}</ul>`}
${current === undefined && html`<p class="gap">This panel has not been on the bench yet.</p>`}
${current && html`<section aria-labelledby="session-${current.date}"><h2 id="session-${current.date}">${current.shownDate}</h2>${sessionHtml(current)}</section>`}
${older.map(
  (it) =>
    html`<details class="older"><summary><h2 id="session-${it.date}">Earlier session, ${it.shownDate}</h2></summary>${sessionHtml(it, current)}</details>`,
)}${withdrawnSessions(panel.slug, guide).map(withdrawnHtml)}${looseCalculation(panel, currency).map((it) => figureHtml(it))}${citeHtml(panel, guide)}`.text // Sentences end with a space, which nobody sees at a paragraph's end.
    .replaceAll('. </p>', '.</p>');
}

/** How to cite the page. Its programs' forms are the panel's, whose page has them: here every byte is counted. */
function citeHtml(panel: PanelEntry, guide: Parameters<typeof workingCitation>[1]): Html | false {
  const citation = workingCitation(panel, guide, 'methodology');
  if (!citation) return false;
  return html`<p id="cite">Cite this: ${citationText(citation)} (<a href="${panelAddress(panel.slug)}#cite">the panel as BibTeX</a>)</p>`;
}

/** @param newer the session whose figures stand in full, where this is an older one */
function sessionHtml(session: SessionCalculation, newer?: SessionCalculation): Html {
  const groups = Map.groupBy(session.figures, (it) => groupOf(it.metric));
  const { distances, shownDate } = session;
  const methods = new Set(newer?.figures.map((it) => `${it.metric}@${it.methodVersion}`));
  return html`<p>${session.conditions}${session.notes && ` ${session.notes}`}</p>
${
  newer &&
  session.flags.length > 0 &&
  html`<ul id="flags-${session.date}">${session.flags.map((it) => html`<li>${flagHtml(it)}</li>`)}</ul>
<p>The mark stands at every figure that it concerns.</p>`
}
<h3 id="readings-${session.date}">Readings</h3>
${readingsHtml(session)}
${GROUPS.map((name, i) => {
  const figures = groups.get(name);
  if (!figures) return false;
  const { shared, rest: own } = sharedNotes(figures);
  const rest = own.filter((it) => it.toldAt === undefined);
  const carried = [...Map.groupBy(own, (it) => it.toldAt && it.carried)].flatMap(([day, those]) =>
    day === undefined ? [] : [toldElsewhereHtml(those)],
  );
  const table = i === 2 && distances && distancesHtml(distances, shownDate, shared);
  const head = html`<h3>${name}</h3>\n${shared.length > 0 && html`<p>${shared.map((it) => `${it.charAt(0).toUpperCase()}${it.slice(1)}. `)}</p>`}`;
  if (!newer) return html`${head}${methodsHtml(rest, '#flags')}${carried}${table}`;
  const lines = rest.map((it) => olderFigureHtml(it, methods.has(`${it.metric}@${it.methodVersion}`)));
  return html`${head}<div class="lines">${lines}</div>${carried}${table}`;
})}
${gapsHtml(session)}
<h3>Instruments and errors</h3>
${instrumentsHtml(session, newer)}
${errorsHtml(session, newer)}`;
}

/**
 * Figures by their methods and what they are, each said once over its own.
 *
 * @param said where the page tells its flags
 */
export const methodsHtml = (figures: readonly Calculation[], said?: string) =>
  [...Map.groupBy(figures, (it) => `${it.methodAddress}${it.methodVersion} ${it.basis}`).values()].map(
    ([first, ...rest]) =>
      first &&
      html`<div class="by"><p>${methodHtml(first)}; ${first.basis}</p>${[first, ...rest].map((it) => figureHtml(it, { basis: first.basis, ...(said !== undefined && { said }) }))}</div>`,
  );

/** Notes that all of some figures have, and the figures without them. */
function sharedNotes(figures: readonly Calculation[]): { shared: string[]; rest: Calculation[] } {
  const notes = figures.length > 1 ? (figures[0]?.notes ?? []) : [];
  const shared = notes.filter((note) => figures.every((it) => it.notes.includes(note)));
  return {
    shared,
    rest: figures.map((it) => ({ ...it, notes: it.notes.filter((note) => !shared.includes(note)) })),
  };
}

/** The instruments of a session; of an older one those that have been calibrated since. */
function instrumentsHtml({ instruments, carried, shownDate }: SessionCalculation, newer?: SessionCalculation): Html {
  if (instruments.length === 0 && carried.length === 0)
    return html`<p class="gap">The session names no instrument, so no reading has a known uncertainty.</p>`;
  const isSame = (it: InstrumentRow) => newer?.instruments.some((one) => JSON.stringify(one) === JSON.stringify(it));
  const same = instruments.filter(isSame);
  const own = instruments.filter((it) => !isSame(it));
  return html`${
    own.length > 0 &&
    sheet(
      `Instruments of ${shownDate}`,
      html`${!newer && html`<caption>Calibration and offset last until the next calibration; repeatability is from the instrument’s file. All is of type B where nothing else is said</caption>`}<thead><tr><th scope="col">For</th><th scope="col">Instrument</th><th scope="col">Calibrated</th><th scope="col">Holds until</th><th scope="col">Stated uncertainty</th><th scope="col">Repeatability</th></tr></thead>
<tbody>${own.map(
        (it) =>
          html`<tr><th scope="row">${it.kind}</th><td><a href="/instruments/#${it.id}">${it.name}</a></td><td>${it.calibrated}</td><td>${it.due}${
            it.isOverdue && html`<strong> (had run out)</strong>`
          }</td><td>${it.uncertainty}</td><td>${it.scatter}</td></tr>`,
      )}</tbody>`,
    )
  }${
    same.length > 0 &&
    html`<p>As in the newer session: ${same.map((it) => `${it.kind} by the ${it.name.toLowerCase()}`).join(', ')}.</p>`
  }${carried.length > 0 && html`<p>For the rest: the meters of its own day.</p>`}`;
}

/** What else moves the readings of a session, said once for all its figures; what a newer session has too, said there. */
export function errorsHtml({ errors, unassessed }: SessionCalculation, newer?: SessionCalculation): Html {
  const lines = (of: Pick<SessionCalculation, 'errors' | 'unassessed'>) => [
    ...of.errors.map(
      ({ what, type, evaluation }) => [what.join(', '), `${type === 'A' ? ' (type A)' : ''}: ${evaluation}`] as const,
    ),
    ...of.unassessed.map(({ what, reason }) => [what, `, in no interval: ${reason}`] as const),
  ];
  const said = new Set(newer && lines(newer).map((it) => it.join()));
  const own = lines({ errors, unassessed }).filter((it) => !said.has(it.join()));
  return html`<ul class="small">${own.map(([what, text]) => html`<li><b>${what}</b>${text}</li>`)}${
    newer && html`<li>The rest as in the newer session.</li>`
  }</ul>`;
}
