/** The check standard of the demonstration against the source that it was simulated from (tests/support/simulate-standard.ts). */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { standardSchema } from '../../src/content/schema/standard.ts';
import { isCode } from '../../src/measure/statement.ts';
import { DEMO_SOURCE } from '../support/demo-folder.ts';
import { demoLedger } from '../support/demo-ledger.ts';
import { BENCH_LAMP, BENCH_LAMP_DAYS, BENCH_LAMP_SEED, simulateStandard } from '../support/simulate-standard.ts';

const file = standardSchema.parse(parse(readFileSync(join(DEMO_SOURCE, 'standards/bench-lamp.yaml'), 'utf8')));

test('its readings are those of the simulation, besides what was struck out', () => {
  const kept = file.readings.map(({ date, value }) => ({
    date,
    values: [value].flat().filter((it) => typeof it === 'number'),
  }));
  expect(kept).toEqual(simulateStandard(BENCH_LAMP, BENCH_LAMP_DAYS, BENCH_LAMP_SEED));
});

describe('its chart', () => {
  const { ledger } = demoLedger();
  const lamp = ledger.standards.find((it) => it.id === 'bench-lamp');
  const points = lamp?.stages.flatMap((it) => it.points) ?? [];

  test('finds the one day on which the meter was upset, and no other', () => {
    expect(points.filter((it) => it.beyond).map((it) => it.date)).toEqual(Object.keys(BENCH_LAMP.upset));
    expect(points).toHaveLength(BENCH_LAMP_DAYS.length);
  });

  test('has the true drift of the lamp within its interval', () => {
    const { drift, limits } = lamp?.current ?? {};
    if (!drift || !limits) throw new Error('no drift');
    const truth = BENCH_LAMP.drift * limits.centre;
    expect(Math.abs(drift.perYear - truth)).toBeLessThan(drift.half);
    expect(drift.isTold).toBe(false);
  });

  test('puts one session in doubt, which no ranking rests on', () => {
    const doubted = [...ledger.panels.values()].flatMap(({ slug, sessions, current }) =>
      sessions
        .filter((it) => it.flags.some((flag) => isCode(flag.finding, 'standard-beyond-limits')))
        .map((it) => [slug, it.date, it === current]),
    );
    expect(doubted).toEqual([['kelpwright-cormorant', '2025-10-21', false]]);
    const change = ledger.panels.get('kelpwright-cormorant')?.current?.change;
    expect(change && 'flags' in change && change.flags.map((it) => it.check)).toEqual(['check-standard']);
  });

  test('has a reading on the day of every session with its meter', () => {
    const days = [...ledger.panels.values()].flatMap(({ sessions }) =>
      sessions.filter((it) => it.instruments.some(({ id }) => id === file.instrument)).map((it) => it.date),
    );
    expect(days.filter((it) => !BENCH_LAMP_DAYS.includes(it))).toEqual([]);
  });
});
