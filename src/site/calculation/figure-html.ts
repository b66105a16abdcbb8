import type { Flag } from '../../measure/figure.ts';
import { daggerOf, SEVERITY_WORDS } from '../../words/flags.ts';
import { nameOf } from '../../words/names.ts';
import { say } from '../../words/say.ts';
import { flagLink } from '../shared/flag-link.ts';
import { type Html, html } from '../shared/html.ts';
import type { Calculation, SessionCalculation } from './calculation-view.ts';
import type { DistanceCalculation } from './distance-calculation.ts';
import type { Input, LinkedPart } from './linked-equation.ts';
import { sheet } from './sheet.ts';
import type { PrintedComponent } from './short-budget.ts';

/** @param said where the page tells the flags themselves: there, what was handed on is said already */
export function flagHtml(flag: Flag, said?: string): Html {
  if (said !== undefined && flag.from !== undefined) {
    return html`<strong>${severityText(flag)}</strong>, <a href="${said}">as said above</a>.`;
  }
  const link = flagLink(flag);
  return html`<strong>${severityText(flag)}.</strong> ${say(flag.finding)}${link && html` <a href="${link.address}">${link.text}</a>`}`;
}

const severityText = ({ severity, from }: Flag) =>
  `${SEVERITY_WORDS[severity]}${from === undefined ? '' : `, handed on from ${nameOf(from)}`}`;

/** What is more than a note, as its mark: the page says it at its head. */
const markOf = (flags: readonly Flag[]) => {
  const mark = daggerOf(flags)?.mark;
  return mark && ` ${mark}`;
};

/** Flags at a figure of a session that says at its head, once, what is more than a note. */
function shortFlagsHtml(flags: readonly Flag[]): Html {
  const mark = daggerOf(flags)?.mark;
  const notes = flags.filter((it) => it.severity === 'note');
  return html`${mark && `${mark} `}${notes.map((flag) => html`${flagHtml(flag)} `)}`;
}

export const idHtml = (anchor: string | undefined): Html | false => anchor !== undefined && html` id="${anchor}"`;

/**
 * One figure, folded, with all that a reader needs to repeat it. Its lasting address is the id of its line: the page’s
 * script makes a link of it, and without one the style sheet writes it out.
 *
 * @param basis what those of its method are, where that is said over them
 * @param said where the page tells its flags
 */
export function figureHtml(it: Calculation, { basis, said }: { basis?: string; said?: string } = {}): Html {
  const { calculation, flags, budget } = it;
  return html`${it.formerAnchor && html`<span id="${it.formerAnchor}"></span>`}<details id="${it.anchor}"><summary${idHtml(it.datedAnchor === it.anchor ? undefined : it.datedAnchor)}>${it.name} <b>${it.shown.text}</b>${it.carried && html` <small>${it.carried}</small>`}</summary>${
    calculation && html`<p>${calculation.map(partHtml)}</p>`
  }${correctedHtml(it)}${flags.map((flag) => html`<p>${flagHtml(flag, said)}</p>`)}${
    budget.length > 0 && html`<p>${partsHead(it)}: ${budgetHtml(it)}</p>`
  }<p>${it.combined && `${it.combined}. `}${notesText(it)}${inputsHtml(it)}${basis === undefined && `${capital(it.basis)}. `}</p></details>`;
}

/** What a figure was before it was corrected, and why; nothing for one that never was. */
const correctedHtml = (it: Calculation) => it.corrected && html`<p>${correctedText(it)}</p>`;

const correctedText = ({ corrected: it }: Calculation) =>
  it && html`<a href="${it.address}">${capital(it.text)}</a>: ${it.moved}. ${it.why} `;

/** Figures that are an earlier session's, in a line that leads to their accounts there; nothing where there are none. */
export function toldElsewhereHtml(figures: readonly Calculation[]): Html | false {
  const [first] = figures;
  if (!first) return false;
  return html`<p>${capital(first.carried ?? '')}: ${figures.map((it, i) => {
    const dated = it.datedAnchor === it.anchor ? undefined : it.datedAnchor;
    return html`${i > 0 && '; '}<a id="${it.anchor}" href="#${it.toldAt}">${it.name}</a> <b${idHtml(dated)}>${it.shown.text}</b>${markOf(it.flags)}`;
  })}.</p>`;
}

/** The method of some figures, said once beside them. */
export const methodHtml = ({ methodName, methodAddress, methodVersion }: Calculation): Html =>
  html`<a href="${methodAddress}">${methodName}, version ${methodVersion}</a>`;

/** A figure of an older session: what is not its own stands with the newer one. */
export function olderFigureHtml(it: Calculation, isSameMethod: boolean): Html {
  const { calculation, flags, budget, interval } = it;
  const text = calculation?.map((part) => (typeof part === 'string' ? part : part.text)).join('');
  return html`<p id="${it.anchor}"><a href="#${it.datedAnchor}">${it.name}</a> <b>${it.shown.text}</b> ${it.carried && `(${it.carried}) `}${shortFlagsHtml(flags)}${correctedText(it)}${
    text && `${isSameMethod ? numbersOf(text) : text}. `
  }${budget.length > 0 && html`${partsHead(it)}: ${budgetHtml(it)}. `}${
    interval && `95 % ${interval}. `
  }${notesText(it)}${!isSameMethod && html`${it.basis}, ${methodHtml(it)}`}</p>`;
}

/** A formula's numbers and result, without the symbols that stand before them; what equals what in brackets stays whole. */
const numbersOf = (equation: string) =>
  equation
    .split(/ = (?![^(]*\))/)
    .slice(-2)
    .join(' = ');

const partHtml = (part: LinkedPart) =>
  typeof part === 'string' ? html`${part}` : html`<a href="${part.page ?? ''}#${part.anchor}">${part.text}</a>`;

const linkHtml = ({ anchor, name, page = '' }: { anchor: string; name: string; page?: string | undefined }) =>
  html`<a href="${page}#${anchor}">${name}</a>`;

const inputHtml = ({ anchor, name, page }: Input) =>
  anchor === undefined ? html`${name}` : linkHtml({ anchor, name, page });

/** What the parts of an interval are in: who comes by an address has not read the page's head. Of nought there is no share. */
const partsHead = ({ short: { lines } }: Calculation) =>
  lines.length > 0 && lines.every((it) => it.relative !== '') ? '±, in %' : '±';

/** What makes up half a figure's interval: what another figure has too is said there. */
function budgetHtml({ short: { as, lines, without }, calculation, metric }: Calculation): Html {
  const own = linesText(lines);
  const less = without.length > 0 && `, without ${without.join(', ')}`;
  if (as.length === 0) return html`${own}`;
  const isLinked = (anchor: string) => calculation?.some((it) => typeof it !== 'string' && it.anchor === anchor);
  return html`as ${as.map((it, i) => {
    const name = isLinked(it.anchor) || it.anchor === metric ? it.short : linkHtml({ ...it, name: it.short });
    return html`${i > 0 && ' and '}${it.anchor === metric ? 'now' : name}`;
  })}${own && `, but ${own}`}${less}`;
}

/** Lines of a budget, those of one reading together: `resolution 0.05 and repeatability 0.8 of peak irradiance`. */
function linesText(lines: readonly PrintedComponent[]): string {
  const told = lines.map(({ name, relative, u }) => {
    const [what = '', ...of] = name.split(' of ');
    return { what, of: of.join(' of '), share: relative.replace(' %', '') || u };
  });
  return [...Map.groupBy(told, ({ what, of }) => of || what).values()]
    .map((alike) => {
      const of = alike[0]?.of ? ` of ${alike[0].of}` : '';
      if (alike.length === 1) return alike.map((it) => `${it.what}${of} ${it.share}`);
      return `${alike.map((it) => `${it.what} ${it.share}`).join(' and ')}${of}`;
    })
    .join(', ');
}

function notesText({ shown, notes }: Calculation): string {
  return [shown.absent && `No uncertainty: ${say(shown.absent)}`, ...notes.map(capital)]
    .filter(Boolean)
    .map((it) => `${it}. `)
    .join('');
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

const inputsHtml = ({ inputs, asBefore }: Calculation) =>
  inputs.length > 0 &&
  html`From ${asBefore ? html`the same as ${linkHtml(asBefore)}` : inputs.map((one, i) => html`${i > 0 && ', '}${inputHtml(one)}`)}. `;

/** The values of the table by distance: one model behind all of it, so one account for all. */
export function distancesHtml(it: DistanceCalculation, date: string, saidNotes: readonly string[]): Html {
  const notes = it.notes.filter((note) => !saidNotes.includes(note));
  return html`<details class="distances"><summary>Light by distance</summary>
${sheet(
  `Values by distance, ${date}`,
  html`<thead><tr><th scope="col">Distance</th>${it.budgets.map(
    ({ name }) => html`<th scope="col">${name}</th>`,
  )}</tr></thead>
<tbody>${it.heads.map(
    (head, i) =>
      html`<tr><th scope="row">${head}</th>${it.budgets.map((_, q) => valueHtml(it.figures[q * it.heads.length + i]))}</tr>`,
  )}</tbody>`,
)}
<p>What one standard uncertainty of each source makes of the figure, %, where it changes at ${it.heads.join(', ')}:</p>
<ul>${it.budgets.map(
    ({ name, lines }) =>
      html`<li>${name}: ${lines.map(({ source, shares }) => `${source} ${sharesText(shares)}`).join('; ')}</li>`,
  )}</ul>
<p>${notes.map((note) => `${capital(note)}. `)}The intervals are the simulation’s, the parts its first-order picture. From ${it.inputs.map(plainName).join(', ')}. modelled by <a href="${it.method}">Irradiance by distance</a>, version ${it.version}</p></details>`;
}

const valueHtml = (one: DistanceCalculation['figures'][number] | undefined) =>
  one &&
  html`<td id="${one.anchor}">${
    one.datedAnchor === one.anchor ? one.shown.text : html`<span id="${one.datedAnchor}">${one.shown.text}</span>`
  }</td>`;

/** One number for all distances where an error is the same at each. */
const sharesText = (shares: readonly string[]) => (new Set(shares).size === 1 ? shares[0] : shares.join('/'));

/** An input without the panel and session that it is of. */
const plainName = (id: string) => id.slice(id.lastIndexOf('/') + 1);

/** Figures that could not be had, those of one reason together. */
export function gapsHtml({ gaps }: SessionCalculation): Html | false {
  if (gaps.length === 0) return false;
  const reasons = Map.groupBy(gaps, (it) => it.reason);
  return html`<h3>Not to be had, and not taken for zero</h3>
<dl class="gaps">${[...reasons].map(
    ([reason, all]) =>
      html`<dt class="gap">${reason}</dt>${all.map(
        (it) =>
          html`<dd id="${it.anchor}">${it.datedAnchor === undefined ? it.name : html`<span id="${it.datedAnchor}">${it.name}</span>`}</dd>`,
      )}`,
  )}</dl>`;
}
