/** The form that begins a run, of a panel of the guide or of a new one. */
import { slugOf } from '../../../../content/templates/file-name.ts';
import { html } from '../../../shared/browser/dom.ts';
import type { BenchPanelFile } from '../bench-data.ts';
import { withPoint } from '../decimal-point.ts';
import { type Act, doAct, newLog, type RunGrid, type RunLog } from '../run.ts';
import { find } from '../sheet-form.ts';
import {
  LEAST_SIDE,
  lengthHint,
  MOST_SIDE,
  readDay,
  readGrid,
  readLength,
  sheetGrid,
  USUAL_INSET,
} from '../sheet-setup.ts';
import { startRun } from '../start-run.ts';
import { today } from '../today.ts';
import type { PadSetup } from './pad-setup.ts';
import { storeWords } from './store-words.ts';

const NAMES = ['panel', 'maker', 'model', 'width', 'height', 'date', 'columns', 'rows', 'inset'] as const;

/** What was written into the form. */
export type StartWritten = Readonly<Record<(typeof NAMES)[number], string>>;

/** What is wrong in the form, and in which field. */
interface StartFault {
  fault: string;
  at: (typeof NAMES)[number];
}

const SIDES = ['width', 'height'] as const;

/**
 * The run that the form begins, or what is wrong with the form.
 *
 * @param file the panel's data, where it is not new
 * @param id of the run
 * @param at now, as ISO 8601
 */
export function startOf(
  written: StartWritten,
  setup: PadSetup,
  file: BenchPanelFile | undefined,
  { id, at }: { id: string; at: string },
): { log: RunLog } | StartFault {
  const panel = setup.panels.find((it) => it.slug === written.panel);
  const date = readDay(written.date);
  if (date === undefined) return { fault: 'The day of the session, such as 2026-11-21.', at: 'date' };
  if (panel?.sessions.includes(date)) {
    return { fault: `${panel.name} has a session of that day already; a panel has one a day.`, at: 'date' };
  }
  const named = panel ?? newPanel(written, setup);
  if ('fault' in named) return named;
  const first = startRun(
    {
      id,
      date,
      panel: { slug: named.slug, isNew: !panel, maker: named.maker, model: named.model },
      ...(file && { file }),
    },
    setup.bench,
  );
  const sides = panel ? { width: panel.field?.width ?? '', height: panel.field?.height ?? '' } : written;
  const grid = gridOfForm(written, first.grid, sides);
  if ('fault' in grid) return grid;
  const measured: Act[] = panel
    ? []
    : SIDES.map((side) => ({ kind: 'enter', path: `field.${side}`, written: withPoint(written[side].trim()), at }));
  return { log: measured.reduce(doAct, newLog({ ...first, grid })) };
}

/** Names of a panel that the guide does not have. */
function newPanel(written: StartWritten, setup: PadSetup): { slug: string; maker: string; model: string } | StartFault {
  const called = written.maker.trim();
  const known = setup.makers.find((it) => [it.name, it.id].some((one) => one.toLowerCase() === called.toLowerCase()));
  const maker = known?.id ?? slugOf(called);
  const model = written.model.trim();
  if (maker === '') return { fault: 'Who makes it.', at: 'maker' };
  if (model === '') return { fault: 'Its model, as the maker writes it.', at: 'model' };
  const odd = SIDES.find((side) => !readLength(written[side], LEAST_SIDE, MOST_SIDE));
  if (odd) {
    const wanted = `The ${odd} of the LED field, such as 20 cm or 8 in: from the first LED’s outer edge to the last one’s.`;
    const hint = lengthHint(written[odd], LEAST_SIDE, MOST_SIDE);
    return { fault: hint ? `${wanted} “${written[odd].trim()}”: ${hint}.` : wanted, at: odd };
  }
  const slug = slugOf(`${known?.name ?? called} ${model}`);
  const same = setup.panels.find((it) => it.slug === slug);
  if (same) return { fault: `${same.name} is in the guide: choose it above.`, at: 'panel' };
  return { slug, maker, model };
}

/** The grid as the form says; what it leaves open is as in the panel's last session. */
function gridOfForm(
  { columns, rows, inset }: StartWritten,
  last: RunGrid,
  sides: { width: string; height: string },
): RunGrid | StartFault {
  const points = readGrid(`${columns || last.columns}x${rows || last.rows}`);
  if (!points) return { fault: 'Points across and down are whole numbers, 40 points in all at most.', at: 'columns' };
  const asked = readLength(inset.trim() || last.inset, 0, MOST_SIDE / 2);
  if (!asked) return { fault: 'The inset is a length, such as 1 in or 2.5 cm.', at: 'inset' };
  const [width, height] = [sides.width, sides.height].map((it) => readLength(it, LEAST_SIDE, MOST_SIDE));
  // The usual inset gives way where it does not fit; one that was asked for does not.
  const isAsked = inset.trim() !== '' || last.inset !== USUAL_INSET.written;
  const made = sheetGrid(
    { ...points, ...(width && { width }), ...(height && { height }), ...(isAsked && { inset: asked }) },
    undefined,
  );
  if (made.fault) return { fault: `An inset of ${made.inset.written} leaves no room between the points.`, at: 'inset' };
  return { ...points, inset: made.inset.written };
}

const field = (name: (typeof NAMES)[number]) => find(`#start-${name}`) as HTMLInputElement;

/**
 * @param fileOf a panel's data
 * @param begin takes the run in, and opens it
 */
export function startForm(
  setup: PadSetup,
  fileOf: (slug: string) => Promise<BenchPanelFile | undefined>,
  begin: (log: RunLog) => Promise<void>,
): void {
  const form = find('[data-pad-start]') as HTMLFormElement;
  const said = find('[data-pad-start-said]');
  const panel = field('panel');
  panel.append(...setup.panels.map(({ slug, name }) => html('option', { value: slug }, name)));
  find('#start-makers').append(...setup.makers.map(({ name }) => html('option', { value: name })));
  const asked = new URLSearchParams(location.search).get('panel');
  if (asked !== null && setup.panels.some((it) => it.slug === asked)) panel.value = asked;
  field('date').value = today();
  const showNew = () => {
    find('[data-pad-new]').hidden = panel.value !== '';
  };
  showNew();
  panel.addEventListener('change', showNew);
  const start = async () => {
    const written = Object.fromEntries(NAMES.map((it) => [it, field(it).value])) as StartWritten;
    for (const it of NAMES) field(it).removeAttribute('aria-invalid');
    const now = { id: crypto.randomUUID(), at: new Date().toISOString() };
    const started = startOf(written, setup, await fileOf(written.panel), now);
    said.textContent = 'fault' in started ? started.fault : '';
    if ('log' in started) return begin(started.log);
    field(started.at).setAttribute('aria-invalid', 'true');
    field(started.at).focus();
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    void start().catch((error: unknown) => {
      said.textContent = storeWords(error);
    });
  });
}
