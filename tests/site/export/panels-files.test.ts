import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { buildLedger } from '../../../src/ledger/build-ledger.ts';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { isInDoubt } from '../../../src/measure/handed-on.ts';
import { METRICS, metricById } from '../../../src/measure/metrics.ts';
import { isLeftOut } from '../../../src/site/export/figure-rows.ts';
import { panelsCsv } from '../../../src/site/export/panels-csv.ts';
import { DATA_FORMAT, panelsJson } from '../../../src/site/export/panels-json.ts';
import { FIGURES_TABLE } from '../../../src/site/export/tables/figures-table.ts';
import { READINGS_TABLE } from '../../../src/site/export/tables/readings-table.ts';
import { type Table, tableCsv } from '../../../src/site/export/tables/table.ts';
import { say } from '../../../src/words/say.ts';
import { metricNamed } from '../../measure/make.ts';
import { type ContentFolder, TODAY, tinyContent } from '../../support/content-folder.ts';
import { type Demo, demoLedger, freshDemo } from '../../support/demo-ledger.ts';
import { expandPanels } from '../../support/expand-panels.ts';
import { fullPanel } from '../../support/full-panel.ts';
import { parseRecords } from '../../support/parse-csv.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

const csvOf = (ledger: Ledger) => [...panelsCsv(ledger)].join('');
const jsonOf = (ledger: Ledger) => [...panelsJson(ledger)].join('');

const published = () => [...demo.ledger.panels.values()].filter((it) => it.data.status === 'published');

describe('panels.csv', () => {
  const records = () => parseRecords(csvOf(demo.ledger));

  /** A figure's three cells, by the names of its columns without their units. */
  function cellsOf(record: Record<string, string>, metric: string): string[] {
    const columns = Object.keys(record).filter((it) => [metric, `${metric} low`, `${metric} high`].includes(bare(it)));
    return columns.map((it) => record[it] ?? '');
  }
  const bare = (column: string) => column.replace(/ \[.*\]$/, '');

  test('has a line for every session of every published panel, and none of withdrawn ones and drafts', () => {
    const expected = published().flatMap(({ slug, sessions }) => sessions.map(({ date }) => `${slug} ${date}`));
    expect(expected.length).toBeGreaterThan(10);
    expect(records().map((it) => `${it.panel} ${it.session}`)).toEqual(expected);
  });

  test('has every figure with both ends of its interval, in the digits of the tables, or why there is none', () => {
    const lines = new Map(records().map((it) => [`${it.panel} ${it.session}`, it]));
    let bounds = 0;
    for (const panel of published()) {
      for (const session of panel.sessions) {
        const line = lines.get(`${panel.slug} ${session.date}`) ?? {};
        for (const it of session.figures.values()) {
          if (isLeftOut(metricById(it.metric), it)) continue;
          const at = `${panel.slug} ${session.date} ${it.metric}`;
          if (!isFigure(it)) {
            expect(cellsOf(line, it.metric), at).toEqual([say(it.reason), '', '']);
            continue;
          }
          const value = String(Number(it.value.toPrecision(12)));
          const sign = it.bound === undefined ? '' : { below: '<', above: '>' }[it.bound];
          if (it.bound) bounds++;
          const ends = it.interval95?.map((end) => String(Number(end.toPrecision(8)))) ?? ['', ''];
          expect(cellsOf(line, it.metric), at).toEqual([`${sign}${value}`, ...ends]);
        }
      }
    }
    expect(bounds).toBeGreaterThan(0);
  });

  test('has the unit of every column in its name, and leaves no figure’s cell empty', () => {
    const columns = Object.keys(records()[0] ?? {});
    for (const { id, unit } of METRICS) {
      const column = columns.find((it) => bare(it) === id);
      if (column) expect(column).toBe(unit === '1' ? id : `${id} [${unit.replace('currency', 'EUR')}]`);
    }
    const values = columns.filter((it) => METRICS.some(({ id }) => id === bare(it)));
    expect(values.length).toBeGreaterThan(90);
    for (const record of records()) {
      expect(values.filter((it) => record[it] === '')).toEqual([]);
      expect(Object.values(record).join(' ')).not.toMatch(/NaN|Infinity|undefined|null|\[object/);
    }
  });

  test('names what is in doubt, and what rests on readings of an earlier session', () => {
    for (const column of ['in_doubt', 'carried_over'] as const) {
      const listed = records().map((it) => it[column]);
      const expected = published().flatMap(({ sessions }) =>
        sessions.map(({ figures }) =>
          [...figures.values()]
            .filter((it) => isFigure(it) && (column === 'in_doubt' ? isInDoubt(it) : it.carriedOver !== undefined))
            .map((it) => it.metric),
        ),
      );
      expect(listed.map((it) => (it ? it.split(' ').toSorted() : []))).toEqual(expected.map((it) => it.toSorted()));
      expect(listed.join('')).not.toBe('');
    }
  });
});

describe('panels.json', () => {
  interface Data {
    format: number;
    currency: string;
    built_for: string;
    reference: { distance_cm: number; method_version: number };
    panels: Array<{
      slug: string;
      address: string;
      rank: object | null;
      rank_absent: string | null;
      prices: Array<{ date: string; base: { value: number; currency: string } }>;
      figures?: Record<string, { value: number | null; reason?: string }>;
      sessions: Array<{
        date: string;
        figures: Record<string, { value: number | null; reason?: string; interval95?: number[] | null; unit?: string }>;
        readings: Array<{ path: string; written: string }>;
      }>;
    }>;
  }
  const data = (): Data => expandPanels(JSON.parse(jsonOf(demo.ledger)));

  test('has lost nothing of any panel, and no digit that says anything: every figure with all that it has, every reading, every sentence', () => {
    const full = published().map((it) => fullPanel(it, demo.ledger));
    expect(full.flatMap((it) => it.sessions).length).toBeGreaterThan(10);
    // Through JSON, which knows no undefined.
    expect(data().panels).toEqual(JSON.parse(JSON.stringify(full)));
  });

  test('says once what panels have alike', () => {
    const file = JSON.parse(jsonOf(demo.ledger));
    expect(new Set(file.texts).size).toBe(file.texts.length);
    const rows = published().length;
    const bytes = Buffer.byteLength(jsonOf(demo.ledger)) / rows;
    expect(bytes).toBeLessThan(30_000);
    // The sentences about limits alone are as long as that when each is written out.
    expect(JSON.stringify(data().panels).length / rows).toBeGreaterThan(60_000);
  });

  test('says its form, its currency, its day and what it compares', () => {
    expect(data()).toMatchObject({
      format: DATA_FORMAT,
      currency: 'EUR',
      built_for: TODAY,
      reference: { distance_cm: 15.24, method_version: 2 },
    });
  });

  test('has every metric of every session: a figure, or null and the reason', () => {
    const { panels } = data();
    expect(panels.map((it) => it.slug).toSorted()).toEqual(
      published()
        .map((it) => it.slug)
        .toSorted(),
    );
    for (const panel of panels) {
      for (const session of panel.sessions) {
        // What only a file could have given is there where one did.
        const found = METRICS.filter((it) => !it.isOfFiles || it.id in session.figures);
        expect(Object.keys(session.figures)).toEqual(found.map((it) => it.id));
        for (const [metric, it] of Object.entries(session.figures)) {
          const figure = demo
            .panel(panel.slug)
            .sessions.find((own) => own.date === session.date)
            ?.figures.get(metricNamed(metric));
          if (isFigure(figure)) {
            expect(it.value).toBe(Number(figure.value.toPrecision(12)));
            expect(it.interval95 ?? null).toEqual(figure.interval95?.map((end) => Number(end.toPrecision(8))) ?? null);
          } else expect([it.value, it.reason]).toEqual([null, figure && say(figure.reason)]);
        }
        expect(session.readings.length).toBeGreaterThan(3);
      }
    }
  });

  test('has the address of each panel, without a double slash', () => {
    for (const it of data().panels) expect(it.address).toBe(`https://panels.curlewstrand.example/panels/${it.slug}/`);
  });

  test('has a rank, or the reason why there is none', () => {
    for (const it of data().panels) expect([it.rank === null, it.rank_absent === null]).toEqual([!it.rank, !!it.rank]);
  });

  test('has every price with its value in the base currency', () => {
    const reed = data().panels.find((it) => it.slug === 'fennimarsh-reed');
    expect(reed?.prices).toMatchObject([{ date: '2026-10-15', paid: 159, base: { currency: 'EUR' } }]);
    expect(reed?.prices[0]?.base.value).toBeCloseTo(182.85, 10);
  });

  test('is the same each time', () => {
    const again = freshDemo().ledger;
    expect(jsonOf(again)).toBe(jsonOf(demo.ledger));
    expect(csvOf(again)).toBe(csvOf(demo.ledger));
  });
});

describe('what a tester may write', () => {
  let content: ContentFolder;
  beforeEach(() => {
    content = tinyContent();
  });
  afterEach(() => content.delete());
  const PLOVER = 'panels/plover/index.md';
  const csv = () => csvOf(buildLedger(content.content(), { today: TODAY }));
  const rowsOf = (table: Table) =>
    parseRecords([...tableCsv(table, buildLedger(content.content(), { today: TODAY }))].join(''));
  const readings = () => rowsOf(READINGS_TABLE);
  const reading = (path: string) => readings().find((it) => it.panel === 'plover' && it.reading === path);

  test.each(['=1+1', '=HYPERLINK("https://bad.example";"x")', '+1', '@SUM(A1)', '-1+1', '\t=1+1'])(
    'a note that is a formula, %j, is no formula in a spreadsheet',
    (note) => {
      content.edit(PLOVER, 'notes: Nothing happened.', `notes: ${JSON.stringify(note)}`);
      const written = reading('notes')?.written ?? '';
      expect(written).toMatch(/^'/);
      expect(written.slice(1)).toBe(note);
    },
  );

  test('a reason for striking that is a formula is none either', () => {
    content.edit(PLOVER, 'struck: The rod had slipped.', 'struck: "=cmd()"');
    expect(reading('grid.rows[2][2][1]')?.struck).toBe("'=cmd()");
  });

  test('negative numbers stay numbers', () => {
    content.edit(PLOVER, 'roomTemperature: 68 F', 'roomTemperature: -4 C');
    expect(reading('roomTemperature')?.value).toBe('-4');
    for (const it of readings().filter((one) => one.value !== ''))
      expect(Number.isFinite(Number(it.value)), `${it.reading}: ${it.value}`).toBe(true);
  });

  test('a model that is a formula is none in the table for spreadsheets', () => {
    content.edit(PLOVER, 'model: Plover', 'model: "=cmd()"');
    expect(parseRecords(csv())[0]?.model).toBe("'=cmd()");
  });

  test('commas, quotes and line ends come back', () => {
    const note = 'First, "second",\nthird; fourth\r\nand 🐦';
    content.edit(PLOVER, 'notes: Nothing happened.', `notes: ${JSON.stringify(note)}`);
    expect(reading('notes')?.written).toBe(note);
  });

  test('a panel without a session has its size and its price', () => {
    content.write(PLOVER, `${content.read(PLOVER).split('sessions:')[0]}---\n`);
    const ledger = buildLedger(content.content(), { today: TODAY });
    const reasonOf = (rows: typeof own) => rows.find((it) => it.metric === 'optical-power')?.reason;
    const own = rowsOf(FIGURES_TABLE).filter((it) => it.panel === 'plover');
    expect(own).toHaveLength(METRICS.filter((it) => !it.isOfFiles).length);
    const valued = own.filter((it) => it.value !== '').map((it) => [it.metric, it.value, it.unit]);
    expect(valued.toSorted()).toEqual([
      ['field-height', '30', 'cm'],
      ['field-width', '20', 'cm'],
      ['led-area', '600', 'cm²'],
      ['real-price', '240', 'EUR'],
    ]);
    const line = parseRecords(csvOf(ledger)).find((it) => it.panel === 'plover');
    expect([line?.session, line?.['led-area [cm²]'], line?.['optical-power [W]']]).toEqual(['', '600', reasonOf(own)]);
    const [panel] = expandPanels(JSON.parse(jsonOf(ledger))).panels;
    expect(panel.figures['led-area'].value).toBe(600);
    expect(panel.sessions).toEqual([]);
  });

  test('an empty guide has a header and no rows', () => {
    content.remove('panels');
    expect(csv().trim().split('\n')).toHaveLength(1);
    expect(csv()).toMatch(/^panel,maker,model,size_class,session,/);
    expect(expandPanels(JSON.parse(jsonOf(buildLedger(content.content(), { today: TODAY })))).panels).toEqual([]);
  });
});

test('panels.json names each session’s instruments with the calibration that counted', () => {
  const panels = expandPanels(JSON.parse(jsonOf(demo.ledger))).panels as Array<{
    slug: string;
    sessions: Array<{ date: string; instruments: Record<string, unknown> }>;
  }>;
  const [now, then] = panels.find((it) => it.slug === 'kelpwright-cormorant')?.sessions ?? [];
  // The wattmeter was calibrated on 29 June 2026, between the two.
  expect(now?.instruments.mains).toEqual({
    id: 'plug-in-wattmeter',
    calibration: '2026-06-29',
    holds_until: '2029-06-29',
    uncertainty: '1 % and 0.2 W at k = 2',
  });
  expect(then?.instruments.mains).toMatchObject({ calibration: '2025-06-30', holds_until: '2028-06-30' });
  expect(then?.instruments.irradiance).toMatchObject({ id: 'bench-thermopile', calibration: '2025-09-15' });
});
