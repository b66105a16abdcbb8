import type { PanelEntry } from '../../ledger/ledger.ts';
import type { Flag } from '../../measure/figure.ts';
import { SEVERITY_WORDS } from '../../words/flags.ts';
import { nameOf } from '../../words/names.ts';
import { say } from '../../words/say.ts';
import { beyondHtml } from '../panel/beyond-html.ts';
import { Html, html } from '../shared/html.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { type Calculation, calculationView, looseCalculation, type SessionCalculation } from './calculation-view.ts';
import type { DistanceCalculation } from './distance-calculation.ts';

/**
 * What a panel's calculation page holds below the site's head: every reading, and how each figure follows from them. As
 * markup, since these pages are two thirds of the guide's bytes, with thousands of cells each.
 */
export function calculationHtml(panel: PanelEntry, currency: string): string {
  const sessions = calculationView(panel, currency);
  return html`<p class="trail"><a href="/">Guide</a> › <a href="${panelAddress(panel.slug)}">${panel.name}</a></p>
<h1>${panel.name}: the working</h1>
<p class="lead">Every reading as it was taken, and how each figure follows from it.</p>
<p>Every figure has an address that stays: <code>#optical-power</code> is always the newest session’s, and the address with a date, such as
<code>#optical-power-${panel.current?.date ?? '2026-01-01'}</code>, that session’s for good; what rests on a price stands with the newest session only. The same figures stand in <a href="/data/panels.json">panels.json</a>.
What an uncertainty budget is: <a href="/methods/uncertainty/">uncertainty</a>. Before you act on a figure, read the <a href="/cautions/">cautions</a>.</p>
${panel.flags.length > 0 && html`<h2 id="flags">Flags</h2>\n<ul>${panel.flags.map((it) => html`<li>${flagHtml(it)}</li>`)}</ul>`}
${sessions.map(sessionHtml)}${
  sessions.length === 0 && html`<p class="gap">This panel has not been on the bench yet.</p>`
}${looseCalculation(panel, currency).map(figureHtml)}`.text;
}

const flagHtml = ({ severity, finding, from }: Flag) =>
  html`<strong>${SEVERITY_WORDS[severity]}${from !== undefined && `, handed on from ${nameOf(from)}`}.</strong> ${say(finding)}`;

function sessionHtml(session: SessionCalculation): Html {
  return html`<section aria-labelledby="session-${session.date}">
<h2 id="session-${session.date}">${session.isCurrent ? 'Current session' : 'Earlier session'}, ${session.shownDate}</h2>
<p>${session.conditions}${session.notes && ` ${session.notes}`}</p>
<h3>Instruments</h3>
${instrumentsHtml(session)}
<h3>Raw readings</h3>
${readingsHtml(session)}
${session.beyond && beyondHtml(session.beyond, session.shownDate)}
<h3>Figures</h3>
<ul class="columns small">${session.figures.map((it) => html`<li><a href="#${it.anchor}">${it.name}</a></li>`)}</ul>
${session.figures.map(figureHtml)}
${session.distances && distancesHtml(session.distances, session.shownDate)}
${
  session.gaps.length > 0 &&
  html`<h3>Gaps</h3>
<p>Figures that could not be had, and why. None of them is taken for zero.</p>
<ul class="columns">${session.gaps.map(
    (it) => html`<li id="${it.anchor}">${it.name}: <span class="gap"${id(it.datedAnchor)}>${it.reason}</span></li>`,
  )}</ul>`
}
</section>`;
}

const id = (anchor: string | undefined) => anchor !== undefined && html` id="${anchor}"`;

/** A table that scrolls by itself where it is too wide, also by keyboard. */
const sheet = (label: string, table: Html) =>
  html`<div class="sheet" role="group" aria-label="${label}" tabindex="0"><table>${table}</table></div>`;

function instrumentsHtml({ instruments, shownDate }: SessionCalculation): Html {
  if (instruments.length === 0)
    return html`<p class="gap">The session names no instrument, so no reading has a known uncertainty.</p>`;
  return sheet(
    `Instruments of ${shownDate}`,
    html`<thead><tr><th scope="col">For</th><th scope="col">Instrument</th><th scope="col">Calibrated</th><th scope="col">Holds until</th><th scope="col">Stated uncertainty</th></tr></thead>
<tbody>${instruments.map(
      (it) =>
        html`<tr><th scope="row">${it.kind}</th><td><a href="/instruments/#${it.id}">${it.name}</a></td><td>${it.calibrated}</td><td>${it.due}${
          it.isOverdue && html`<strong> (had run out)</strong>`
        }</td><td>${it.uncertainty}</td></tr>`,
    )}</tbody>`,
  );
}

function readingsHtml({ readings, shownDate }: SessionCalculation): Html {
  return sheet(
    `Raw readings of ${shownDate}`,
    html`<caption>As they stand in the panel’s file; struck-out readings stay, with their reason.</caption>
<thead><tr><th scope="col">Reading</th><th scope="col">As written</th><th scope="col">Path</th></tr></thead>
<tbody>${readings.map(
      (it) =>
        html`<tr><th scope="row">${it.label}</th><td>${
          it.struck ? html`<s>${it.written}</s><small> struck out: ${it.struck}</small>` : it.written
        }</td><td><code>${it.path}</code></td></tr>`,
    )}</tbody>`,
  );
}

/** One figure with all that a reader needs to repeat it. */
function figureHtml(it: Calculation): Html {
  return html`<section class="working" id="${it.anchor}">
<h4${id(it.datedAnchor === it.anchor ? undefined : it.datedAnchor)}><span>${it.name}</span> <span>${it.shown.text}</span></h4>
<p class="small soft"><code>${it.id}</code>, ${it.basis}, by <a href="${it.methodAddress}">${it.methodName}</a>, version ${it.methodVersion}</p>${
    it.formula &&
    html`<div class="formula" role="group" tabindex="0" aria-label="Formula of ${it.datedAnchor}">${new Html(it.formula)}</div>`
  }${it.formulaAt && html`<p class="small soft">Formula: <a href="#${it.formulaAt}">as above</a>.</p>`}${
    it.calculation && html`<p class="sum">${it.calculation}</p>`
  }${it.sentence && html`<p>${it.sentence}</p>`}${it.flags.map(
    (flag) => html`<p>${flagHtml(flag)}</p>`,
  )}${notesHtml(it.notes)}${it.shown.absent && html`<p class="small">No uncertainty: ${say(it.shown.absent)}.</p>`}${
    it.budget.length > 0 && budgetHtml(it)
  }${it.combined && html`<p class="small">${it.combined}</p>`}${unassessedHtml('interval', it.unassessed)}${inputsHtml(it.inputs)}
</section>`;
}

const BUDGET_HEAD = html`<thead><tr><th scope="col">Source of uncertainty</th><th scope="col">Type</th><th scope="col" class="n">u</th><th scope="col" class="n">of the figure</th><th scope="col">How it was come by</th></tr></thead>`;

function budgetHtml({ budget, datedAnchor }: Calculation): Html {
  return sheet(
    `Uncertainty budget of ${datedAnchor}`,
    html`${BUDGET_HEAD}<tbody>${budget.map(
      (line) =>
        html`<tr><th scope="row">${line.source}</th><td>${line.type}</td><td class="n">${line.u}</td><td class="n">${line.relative}</td><td>${line.evaluation}</td></tr>`,
    )}</tbody>`,
  );
}

const notesHtml = (notes: readonly string[]) => notes.map((note) => html`<p class="small">Note: ${note}.</p>`);

const unassessedHtml = (of: 'interval' | 'intervals', unassessed: Calculation['unassessed']) =>
  unassessed.length > 0 &&
  html`<p class="small">Not in the ${of}: ${unassessed.map((it) => `${say(it.what).toLowerCase()} (${say(it.reason)})`).join('; ')}.</p>`;

const inputsHtml = (inputs: readonly string[]) =>
  html`<p class="small soft">From ${inputs.map((it, i) => html`${i > 0 && ', '}<code>${it}</code>`)}</p>`;

/** The calculation of the table by distance: one model behind all of it, so one account for all. */
function distancesHtml(it: DistanceCalculation, date: string): Html {
  return html`<section class="working distances">
<h4>Light by distance</h4>
<p class="small soft">modelled, by <a href="${it.method}">Irradiance by distance</a>, version ${it.version}. Intervals are those of the simulation; the parts below are its first-order picture.</p>
${sheet(
  `Values by distance, ${date}`,
  html`<thead><tr><th scope="col">Figure</th><th scope="col" class="n">Value</th><th scope="col" class="n">u</th><th scope="col" class="n">95 % interval</th></tr></thead>
<tbody>${it.figures.map(
    (one) =>
      html`<tr id="${one.anchor}"><th scope="row"${id(one.datedAnchor === one.anchor ? undefined : one.datedAnchor)}>${one.name}<small> <code>${one.id}</code></small></th><td class="n">${one.shown.text}</td><td class="n">${one.u}</td><td class="n">${one.interval}</td></tr>`,
  )}</tbody>`,
)}
${sheet(
  `Uncertainty budget by distance, ${date}`,
  html`<caption>What one standard uncertainty of each source makes of the figure, %</caption>
<thead><tr><th scope="col">Source of uncertainty</th>${it.heads.map((head) => html`<th scope="col" class="n">${head}</th>`)}</tr></thead>
${it.budgets.map(
  (budget) =>
    html`<tbody><tr><th scope="rowgroup" colspan="${1 + it.heads.length}">${budget.name}</th></tr>${budget.lines.map(
      (line) =>
        html`<tr><th scope="row">${line.source}</th>${line.shares.map((share) => html`<td class="n">${share}</td>`)}</tr>`,
    )}</tbody>`,
)}`,
)}
${notesHtml(it.notes)}${unassessedHtml('intervals', it.unassessed)}${inputsHtml(it.inputs)}
</section>`;
}
