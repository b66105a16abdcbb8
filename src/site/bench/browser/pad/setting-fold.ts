/** Which meters read, on what day, on which grid, and where past the edges and before the middle. */
import { INSTRUMENT_KINDS, type InstrumentKind } from '../../../../content/schema/instrument-kinds.ts';
import { showDate } from '../../../../words/format.ts';
import { html } from '../../../shared/browser/dom.ts';
import { calibrationState } from '../calibration-state.ts';
import type { Act } from '../run.ts';
import { find } from '../sheet-form.ts';
import { MOST_SIDE, readDay, readGrid, readLength } from '../sheet-setup.ts';
import { carriable } from '../start-run.ts';
import type { Pad } from './pad-context.ts';
import { edgesOf, sweepOf } from './places.ts';

const KIND_NAMES: Readonly<Record<InstrumentKind, string>> = {
  irradiance: 'Irradiance',
  spectrum: 'Spectrum',
  mains: 'Mains draw',
  magnetic: 'Magnetic field',
  electric: 'Electric field',
  radio: 'Radio',
  sound: 'Sound',
  flicker: 'Flicker',
  length: 'Lengths',
  temperature: 'Temperature',
};

/** Blocks that a later session can carry over, as far as they are not called as what reads them. */
const BLOCK_NAMES: Readonly<Record<string, string>> = {
  ...KIND_NAMES,
  light: 'Light: peak, grid, past the edges, sweep',
  wavelengths: 'Wavelengths',
  hotSpots: 'Hot spots',
};

/** A field of the fold: its acts for what was written, or what is wrong with it. */
interface Asked {
  id: string;
  label: string;
  value: string;
  type?: 'date';
  acts(written: string): Act[] | string;
}

export function startSetting(pad: Pad): void {
  const place = find('[data-pad-setting]');
  const fault = html('p', { class: 'pad-fault', role: 'alert' });
  const fields = html('div', { class: 'pad-pairs' });
  const meters = html('div', { class: 'pad-pairs' });
  place.replaceChildren(
    html('p', { class: 'small' }, 'A place that no chosen meter reads is left out of the way.'),
    meters,
    fields,
    fault,
  );
  const perform = (acts: readonly Act[]) => void pad.perform(...acts).catch(() => undefined);

  const carried = html('div', { class: 'pad-pairs' });
  meters.after(carried);
  let drawn: unknown;
  pad.add(() => {
    if (drawn === pad.run) return;
    drawn = pad.run;
    const focused = document.activeElement?.id;
    meters.replaceChildren(...INSTRUMENT_KINDS.flatMap((kind) => meterRow(pad, kind, perform)));
    carried.replaceChildren(...carriedRows(pad, perform));
    fields.replaceChildren(...askedOf(pad).map((it) => fieldRow(it, perform, fault)));
    // The field that was left by Tab for the next one keeps its focus.
    if (focused && place.querySelector(`#${CSS.escape(focused)}`)) document.getElementById(focused)?.focus();
  });
}

function meterRow(pad: Pad, kind: InstrumentKind, perform: (acts: readonly Act[]) => void): HTMLElement[] {
  const all = pad.setup.meters(kind);
  const chosen = pad.run.instruments[kind];
  if (all.length === 0 && chosen === undefined) return [];
  const id = `pad-meter-${kind}`;
  const select = html(
    'select',
    { id },
    html('option', { value: '' }, 'none'),
    ...all.map((it) => html('option', { value: it.id }, it.name)),
  );
  select.value = chosen ?? '';
  select.addEventListener('change', () =>
    perform([{ kind: 'set', field: 'instruments', key: kind, value: select.value }]),
  );
  const meter = all.find((it) => it.id === chosen);
  const state = meter && calibrationState(meter.spans, pad.run.date);
  const said = state && html('span', { class: state.isExpired ? 'small expired' : 'small' }, state.text);
  return [html('p', {}, html('label', { for: id }, KIND_NAMES[kind]), select, said)];
}

/** What an earlier session of the panel has read, and this one need not. */
function carriedRows(pad: Pad, perform: (acts: readonly Act[]) => void): HTMLElement[] {
  const days = pad.data ? carriable(pad.data, pad.run.date) : {};
  return Object.entries(days).map(([block, day]) => {
    const id = `pad-carried-${block}`;
    const select = html(
      'select',
      { id },
      html('option', { value: '' }, 'read again'),
      html('option', { value: day }, `stands from ${showDate(day)}`),
    );
    select.value = pad.run.carried[block] ?? '';
    select.addEventListener('change', () =>
      perform([{ kind: 'set', field: 'carried', key: block, value: select.value }]),
    );
    return html('p', {}, html('label', { for: id }, BLOCK_NAMES[block] ?? block), select);
  });
}

function fieldRow(it: Asked, perform: (acts: readonly Act[]) => void, fault: HTMLElement): HTMLElement {
  const field = html('input', { id: it.id, type: it.type ?? 'text', autocomplete: 'off', value: it.value });
  field.addEventListener('change', () => {
    const acts = it.acts(field.value.trim());
    fault.textContent = typeof acts === 'string' ? acts : '';
    field.setAttribute('aria-invalid', String(typeof acts === 'string'));
    if (typeof acts !== 'string') perform(acts);
  });
  return html('p', {}, html('label', { for: it.id }, it.label), field);
}

const setting = (key: string, value: string): Act => ({ kind: 'set', field: 'settings', key, value });

function askedOf(pad: Pad): Asked[] {
  const { run } = pad;
  const { rows, columns, inset } = run.grid;
  const isLength = (text: string) => readLength(text, 0, MOST_SIDE) !== undefined;
  return [
    {
      id: 'pad-date',
      label: 'Day of the session',
      type: 'date',
      value: run.date,
      acts: (text) => (readDay(text) ? [{ kind: 'set', field: 'date', value: text }] : 'A day, such as 2026-11-21.'),
    },
    {
      id: 'pad-grid',
      label: 'Points, across × down',
      value: `${columns} × ${rows}`,
      acts: (text) => {
        const grid = readGrid(text);
        if (!grid) return 'Points across and down, such as 3 × 5; 40 at most.';
        return [{ kind: 'set', field: 'grid', value: { ...grid, inset } }];
      },
    },
    {
      id: 'pad-inset',
      label: 'Inset of the outer points',
      value: inset,
      acts: (text) =>
        isLength(text)
          ? [{ kind: 'set', field: 'grid', value: { rows, columns, inset: text } }]
          : 'A length, such as 1 in or 2.5 cm.',
    },
    {
      id: 'pad-distance',
      label: 'Distance from the LEDs to the sensor',
      value: run.settings.distance ?? '',
      acts: (text) => (isLength(text) ? [setting('distance', text)] : 'A length, such as 6 in or 15 cm.'),
    },
    ...(['magnetic', 'electric', 'radio', 'sound'] as const)
      .filter((kind) => run.instruments[kind] !== undefined)
      .map(
        (kind): Asked => ({
          id: `pad-distance-${kind}`,
          label: `${KIND_NAMES[kind]}: from the panel to the meter`,
          value: run.settings[`${kind}.distance`] ?? '',
          acts: (text) => (isLength(text) ? [setting(`${kind}.distance`, text)] : 'A length, such as 6 in or 1 m.'),
        }),
      ),
    {
      id: 'pad-sweep',
      label: 'Distances before the middle',
      value: sweepOf(run)
        .map((it) => it.distance)
        .join(', '),
      acts: (text) => {
        const acts = sweepActs(text, isLength);
        return typeof acts === 'string' ? acts : [...acts, ...cleared(pad, /^distances\[\d+\]/, acts)];
      },
    },
    {
      id: 'pad-edges',
      label: 'Places past the edges',
      value: edgesOf(run)
        .map((it) => `${it.edge} ${it.past}`)
        .join(', '),
      acts: (text) => {
        const acts = edgeActs(text, isLength);
        return typeof acts === 'string' ? acts : [...acts, ...cleared(pad, /^beyond\[\d+\]/, acts)];
      },
    },
  ];
}

/** Takes away what is no longer named, unless something was read there. */
function cleared({ run }: Pad, list: RegExp, kept: readonly Act[]): Act[] {
  const stays = new Set(kept.flatMap((it) => ('key' in it ? [it.key] : [])));
  return Object.keys(run.settings).flatMap((key) => {
    const place = list.exec(key)?.[0];
    if (place === undefined || stays.has(key)) return [];
    return run.entries.some((it) => it.path.startsWith(place)) ? [] : [setting(key, '')];
  });
}

function sweepActs(text: string, isLength: (text: string) => boolean): Act[] | string {
  const all = listOf(text);
  if (all.length === 0 || !all.every(isLength)) return 'Lengths with commas between them, such as 10 cm, 30 cm, 60 cm.';
  return all.map((it, i) => setting(`distances[${i}].distance`, it));
}

function edgeActs(text: string, isLength: (text: string) => boolean): Act[] | string {
  const all = listOf(text).map((it) => /^(left|right|top|bottom)\s+(.+)$/i.exec(it));
  const acts = all.flatMap((it, i) =>
    it && isLength(it[2] ?? '')
      ? [setting(`beyond[${i}].edge`, (it[1] ?? '').toLowerCase()), setting(`beyond[${i}].past`, it[2] ?? '')]
      : [],
  );
  return all.length > 0 && acts.length === 2 * all.length
    ? acts
    : 'Edge and distance with commas between them, such as right 8 cm, right 20 cm, top 8 cm.';
}

const listOf = (text: string) =>
  text
    .split(',')
    .map((it) => it.trim())
    .filter((it) => it !== '');
