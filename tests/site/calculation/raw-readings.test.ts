/** Every reading that stands in a panel's file is published, once, as it was written. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { FILE_READERS } from '../../../src/content/read/files/readers.ts';
import type { SessionEntry } from '../../../src/ledger/ledger.ts';
import { type RawReading, rawReadings } from '../../../src/site/calculation/raw-readings.ts';
import { DEMO_FOLDER } from '../../support/demo-folder.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

/** Fields of a session that are no readings. */
const ABOUT = new Set([
  ...['date', 'methodVersion', 'instruments', 'photos', 'carried', 'draft'],
  // Blocks that name files: what is in these is no reading of the front matter.
  ...FILE_READERS.flatMap((it) => it.places.map(({ path: [block = ''] }) => block)),
]);

interface Leaf {
  path: string;
  written: string | number;
  struck?: string;
}

/** The readings of a session by a walk over its YAML, without any schema. */
function leavesOf(session: Record<string, unknown>): Leaf[] {
  const leaves: Leaf[] = [];
  const walk = (value: unknown, path: string): void => {
    if (Array.isArray(value)) {
      // A point with one reading in a list is that reading.
      value.forEach((item, i) => {
        walk(item, isPoint(path) && value.length === 1 ? path : `${path}[${i}]`);
      });
    } else if (typeof value === 'object' && value !== null) {
      const { value: written, struck } = value as { value?: string | number; struck?: string };
      if (struck !== undefined && written !== undefined) leaves.push({ path, written, struck });
      else for (const [key, inner] of Object.entries(value)) walk(inner, path ? `${path}.${key}` : key);
    } else leaves.push({ path, written: value as string | number });
  };
  const isPoint = (path: string) => /^grid\.rows\[\d+\]\[\d+\]$/.test(path);
  walk(Object.fromEntries(Object.entries(session).filter(([key]) => !ABOUT.has(key))), '');
  return leaves;
}

function yamlOf(slug: string): Array<Record<string, unknown>> {
  const file = demo.content.panels.get(slug)?.source.file.replace(/^content/, DEMO_FOLDER) ?? '';
  const front = readFileSync(file, 'utf8').split(/^---$/m)[1] ?? '';
  return (parse(front) as { sessions?: Array<Record<string, unknown>> }).sessions ?? [];
}

function sessionsWithYaml(): Array<[SessionEntry, Leaf[]]> {
  return [...demo.ledger.panels.values()].flatMap(({ slug, sessions }) =>
    yamlOf(slug).map((yaml): [SessionEntry, Leaf[]] => {
      const session = sessions.find((it) => it.date === yaml.date);
      if (!session) throw new Error(`${slug}: no session of ${yaml.date}`);
      return [session, leavesOf(yaml)];
    }),
  );
}

/** Paths as a person would compare them: list positions without their brackets. */
const plain = (path: string) => path.replace(/\[(\d+)\]/g, '.$1');

describe('raw readings of the demo', () => {
  test('hold every reading of the files exactly once', () => {
    let count = 0;
    for (const [session, leaves] of sessionsWithYaml()) {
      const listed = rawReadings(session);
      // The grid's inset has a documented default, which is listed where the file leaves it out.
      const isDefault = ({ path }: RawReading) =>
        path === 'grid.inset' && !leaves.some((leaf) => leaf.path === 'grid.inset');
      const paths = listed.filter((it) => !isDefault(it)).map((it) => plain(it.path));
      expect(paths.toSorted(), session.id).toEqual(leaves.map((it) => plain(it.path)).toSorted());
      count += leaves.length;
    }
    expect(count).toBeGreaterThan(400);
  });

  test('are as they were written, a bare number with its unit', () => {
    for (const [session, leaves] of sessionsWithYaml()) {
      const listed = new Map(rawReadings(session).map((it) => [plain(it.path), it]));
      for (const { path, written, struck } of leaves) {
        const it = listed.get(plain(path));
        if (typeof written === 'number') expect(it?.written, path).toMatch(new RegExp(`^${written} \\S+$`));
        // A bound without a unit is in the field's own, as a bare number is.
        else expect(it?.written, path).toBe(/^<[\d.]+$/.test(written) ? `${written} mW/cm²` : written.trim());
        expect(it?.struck, path).toBe(struck);
      }
    }
  });

  test('have a value in the canonical unit, but for words', () => {
    for (const [session] of sessionsWithYaml()) {
      for (const it of rawReadings(session)) {
        const isWords = it.path === 'hotSpots' || it.path === 'notes' || it.path.endsWith('.edge');
        expect(Number.isFinite(it.value), it.path).toBe(!isWords);
      }
    }
    const reed = demo.panel('fennimarsh-reed').sessions[0] as SessionEntry;
    const valueAt = (path: string) => rawReadings(reed).find((it) => it.path === path)?.value;
    expect(valueAt('peak.combined')).toBe(47.3);
    expect(valueAt('radio.on')).toBe(0.021);
    expect(valueAt('warmUp')).toBe(2100);
    expect(valueAt('sound.distance')).toBe(100);
  });

  test('keep bounds', () => {
    const limpet = demo.panel('kelpwright-limpet').sessions[0] as SessionEntry;
    const bounds = rawReadings(limpet).filter((it) => it.bound);
    expect(bounds.map((it) => [it.path, it.bound, it.written])).toEqual([
      ['magnetic.off', 'below', '<0.1 uT'],
      ['magnetic.on', 'below', '<0.1 uT'],
      ['flicker.red.percent', 'below', '<0.5 %'],
      ['flicker.nearInfrared.percent', 'below', '<0.5 %'],
      ['flicker.combined.percent', 'below', '<0.5 %'],
    ]);
  });

  test('have labels in words, each once', () => {
    for (const [session] of sessionsWithYaml()) {
      const labels = rawReadings(session).map((it) => it.label);
      expect(new Set(labels).size).toBe(labels.length);
      for (const label of labels) expect(label).not.toMatch(/[A-Z[\]]|undefined/);
    }
  });
});
