import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { METRICS } from '../../src/measure/metrics.ts';
import { DEMO_FOLDER, DEMO_SITE } from '../support/demo-folder.ts';
import { readCsv } from './read-csv.ts';
import { type DataFigure, FILES, panelFiles, panelsJson } from './site.ts';

const json = panelsJson();
const table = (name: string) => readCsv(readFileSync(join(DEMO_SITE, `data/${name}.csv`), 'utf8'));
const published = panelFiles('published').map((it) => it.slug);

/** Every figure and gap of the JSON file, with where it stands. */
const figures = json.panels.flatMap((panel) =>
  [...panel.sessions, ...(panel.figures ? [{ date: '', figures: panel.figures }] : [])].flatMap((session) =>
    Object.entries(session.figures).map(([metric, figure]) => ({
      panel: panel.slug,
      session: session.date,
      metric,
      figure,
    })),
  ),
);
type Known = Extract<DataFigure, { value: number }>;
const isKnown = (it: DataFigure): it is Known => it.value !== null;
const known = figures.flatMap((it) => (isKnown(it.figure) ? [{ ...it, figure: it.figure }] : []));

describe('panels.json', () => {
  test('holds the published panels, and no others', () => {
    expect(json.panels.map((it) => it.slug).toSorted()).toEqual(published);
  });

  test('says of what form and day it is', () => {
    expect(json.format).toBe(5);
    expect(json.built_for).toMatch(/^\d{4}-\d\d-\d\d$/);
    expect(json.currency).toMatch(/^[A-Z]{3}$/);
  });

  test('holds every session of its panels, newest first', () => {
    for (const file of panelFiles('published')) {
      const dates = (file.data.sessions ?? [])
        .map((it) => it.date)
        .toSorted()
        .toReversed();
      expect(json.panels.find((it) => it.slug === file.slug)?.sessions.map((it) => it.date)).toEqual(dates);
    }
  });

  test('holds every metric of every newest session, as a figure or as a reason', () => {
    for (const panel of json.panels) {
      const current = panel.sessions[0]?.figures ?? panel.figures ?? {};
      // What only a file could have given is there where one did.
      const ids = METRICS.filter((it) => !it.isOfFiles || it.id in current).map((it) => it.id);
      expect(Object.keys(current).toSorted(), panel.slug).toEqual(ids.toSorted());
    }
    expect(known.length).toBeGreaterThan(100);
  });

  test('gives a reason for every gap', () => {
    for (const { panel, metric, figure } of figures) {
      if (!isKnown(figure)) expect(figure.reason, `${panel} ${metric}`).toMatch(/\S/);
    }
  });

  test('gives every figure its unit, basis, method and version', () => {
    for (const { panel, session, metric, figure } of known) {
      // A price and the size of the field belong to the panel, whatever the session.
      expect([`${panel}/${session}/${metric}`, `${panel}/${metric}`]).toContain(figure.id);
      expect(Number.isFinite(figure.value), figure.id).toBe(true);
      const registered = METRICS.find((it) => it.id === metric);
      expect(figure.unit, figure.id).toBe(registered?.unit.replace('currency', json.currency));
      expect(['measured', 'derived', 'modelled', 'claimed'], figure.id).toContain(figure.basis);
      expect(FILES, figure.id).toContain(`/methods/${figure.method}/index.html`);
      expect(figure.method_version, figure.id).toBeGreaterThanOrEqual(1);
    }
  });

  const RECIPROCAL = /\/(?:price-per-watt|time-per-joule)$/;

  test('gives every figure its uncertainty with an interval around it, or says why there is none', () => {
    for (const { figure } of known) {
      const { id, value, standard_uncertainty: u, interval95, uncertainty_absent: absent } = figure;
      if (u === null) {
        expect(interval95, id).toBeNull();
        expect(absent, id).toMatch(/\S/);
      } else {
        expect(absent, id).toBeUndefined();
        expect(u, id).toBeGreaterThanOrEqual(0);
        const [low, high] = interval95 as [number, number];
        expect(low, id).toBeLessThanOrEqual(value);
        expect(high, id).toBeGreaterThanOrEqual(value);
        // A time to a limit falls faster than its irradiance rises, and is cut at 1000 s.
        if (id.includes('/infrared-stay-')) continue;
        if (figure.basis === 'modelled') {
          // From a simulation: neither symmetric nor of a fixed k.
          expect(high - low, id).toBeGreaterThan(2 * u);
          expect(high - low, id).toBeLessThan(6 * u);
          continue;
        }
        // A half-width of the interval is k u with k at least 1.96, save where it is cut at a physical zero.
        expect(high - value, id).toBeGreaterThanOrEqual(1.95 * u);
        // What is divided by a measured value reaches less far down than up, by the ratio of the two ends.
        const down = RECIPROCAL.test(id) ? (value - low) * (high / value) : value - low;
        expect(down, id).toBeGreaterThanOrEqual(low === 0 ? 0 : 1.95 * u * (1 - 1e-9));
      }
    }
  });
});

test('every raw reading with a value has its unit', () => {
  const readings = json.panels.flatMap((panel) => panel.sessions.flatMap((it) => it.readings));
  expect(readings.length).toBeGreaterThan(100);
  expect(readings.filter((it) => it.value !== undefined && !it.unit)).toEqual([]);
});

test('panels.csv has a line for each session of each published panel', () => {
  const lines = table('panels').map((it) => `${it.panel} ${it.session}`);
  expect(lines).toEqual(json.panels.flatMap(({ slug, sessions }) => sessions.map(({ date }) => `${slug} ${date}`)));
  expect([...new Set(table('panels').map((it) => it.panel))].toSorted()).toEqual(published);
});

describe('the tables of the data package', () => {
  const lines = table('tables/figures');

  test('hold the figures of panels.json, value for value', () => {
    const number = (text: string | undefined) => (text ? Number(text) : null);
    // What figures of a metric have alike stands with it.
    const metrics = new Map(table('tables/metrics').map((it) => [it.metric, it]));
    const alike = (it: Record<string, string>) => (it.value ? (metrics.get(it.metric ?? '') ?? {}) : {});
    const fromCsv = lines.map((it) => [
      [it.panel, it.session, it.metric].join('/'),
      number(it.value),
      it.unit,
      it.bound,
      number(it.standard_uncertainty),
      number(it.interval95_low),
      number(it.interval95_high),
      it.basis || (alike(it).basis ?? ''),
      alike(it).method ?? '',
      number(alike(it).method_version),
      it.reason,
    ]);
    const fromJson = figures.map(({ panel, session, metric, figure }) => {
      const at = [panel, session, metric].join('/');
      return isKnown(figure)
        ? [
            at,
            figure.value,
            figure.unit,
            figure.bound ?? '',
            figure.standard_uncertainty,
            figure.interval95?.[0] ?? null,
            figure.interval95?.[1] ?? null,
            figure.basis,
            figure.method,
            figure.method_version,
            figure.uncertainty_absent ?? '',
          ]
        : [at, null, '', '', null, null, null, '', '', null, figure.reason];
    });
    expect(fromCsv).toEqual(fromJson);
  });

  test('name the flags of panels.json beside the figures that they concern', () => {
    for (const panel of json.panels) {
      for (const session of panel.sessions) {
        for (const flag of session.flags) {
          for (const metric of flag.concerns) {
            if (!isKnown(session.figures[metric] ?? { value: null, reason: '' })) continue;
            const line = lines.find(
              (it) => it.panel === panel.slug && it.session === session.date && it.metric === metric,
            );
            expect(line?.flags?.split(' '), `${panel.slug} ${metric}`).toContain(flag.check);
          }
        }
      }
    }
    expect(lines.some((it) => it.flags !== '')).toBe(true);
  });

  test('hold the raw readings of panels.json, struck-out ones with their reason', () => {
    const fromCsv = table('tables/readings').map((it) => [
      it.panel,
      it.session,
      it.reading,
      it.written || `${it.value} ${it.unit}`,
      it.value,
      it.unit,
      it.struck,
    ]);
    const fromJson = json.panels.flatMap((panel) =>
      panel.sessions.flatMap((session) =>
        session.readings.map((it) => [
          panel.slug,
          session.date,
          it.path,
          // What a spreadsheet would take for a formula comes with an apostrophe in front; a negative number is none.
          it.written.replace(/^(?:[=+@\t\r]|-(?!\d))/, "'$&"),
          it.value === undefined ? '' : String(it.value),
          it.unit ?? '',
          it.struck ?? '',
        ]),
      ),
    );
    expect(fromCsv).toEqual(fromJson);
    expect(fromCsv.some((it) => it.at(-1) !== '')).toBe(true);
  });
});

describe('drafts', () => {
  const drafts = panelFiles('draft');

  /** A file's text; the parts of the search index are compressed. */
  function fileText(file: string): string {
    const bytes = readFileSync(join(DEMO_SITE, file));
    return (bytes[0] === 0x1f && bytes[1] === 0x8b ? gunzipSync(bytes) : bytes).toString('utf8');
  }

  test('there is one to look for, and a way to find it', () => {
    expect(drafts.length).toBeGreaterThan(0);
    const somePanel = published[0] as string;
    const found = FILES.filter((file) => fileText(file).includes(somePanel));
    expect(found.some((it) => it.startsWith('/pagefind/fragment/'))).toBe(true);
    expect(found).toContain('/data/panels.json');
  });

  test.each(drafts)('$slug stands nowhere in the site, not even in its search index', ({ slug, data }) => {
    const maker = parse(readFileSync(join(DEMO_FOLDER, `makers/${data.maker}.yaml`), 'utf8'));
    const names = [slug, `${maker.name} ${data.model}`];
    const found = FILES.filter((file) => names.some((it) => `${file}\n${fileText(file)}`.includes(it)));
    expect(found).toEqual([]);
  });
});
