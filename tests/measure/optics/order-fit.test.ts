import { describe, expect, test } from 'vitest';
import { estimatePanel } from '../../../src/measure/optics/estimate.ts';
import { chooseOrder, claimedOrder, type Order, type OrderFit } from '../../../src/measure/optics/order-fit.ts';
import type { LightSource } from '../../support/light-source.ts';
import { type Bench, exactBench, lightSource, opticsInput, SENSOR } from './make.ts';

const SWEEP = [10, 15.24, 20, 30, 45, 60, 90];
const work = (bench: Bench) => estimatePanel(opticsInput({ ...bench, draws: 40 }));
const fitOf = (it: OrderFit | undefined): Order => {
  if (!it || !('fit' in it)) throw new Error(`no fit: ${it?.withheld ?? 'not tried'}`);
  return it.fit;
};
const reasonOf = (it: OrderFit | undefined): string => (it && 'withheld' in it ? it.withheld : 'it was not withheld');

/** Half angles of the orders 1, 2, 4.8 and 20. */
const ANGLES = [60, 45, 30, 15] as const;

describe('a known beam is found again', () => {
  test.each(ANGLES)('half angle %d°, from a sweep', (halfAngle) => {
    const source = lightSource({ halfAngle });
    const { tried, estimates } = work(exactBench(source, { sweep: SWEEP }));
    const fit = fitOf(tried.sweep);
    expect(Math.abs(fit.halfAngle / halfAngle - 1)).toBeLessThan(2e-3);
    expect(fit.residual).toBeLessThan(1e-4);
    expect(fit.interval95[0]).toBeLessThan(halfAngle);
    expect(fit.interval95[1]).toBeGreaterThan(halfAngle);
    expect(Math.abs((estimates?.emitted?.value ?? 0) / 60 - 1)).toBeLessThan(2e-3);
  });

  test.each(ANGLES)('half angle %d°, from a grid of 5 × 5', (halfAngle) => {
    // A palm-sized panel, whose beams shape the light at 6 in.
    const source = lightSource({ halfAngle, width: 20, height: 30, columns: 8, rows: 12 });
    const { tried, estimates } = work(exactBench(source, { grid: [5, 5] }));
    const fit = fitOf(tried.grid);
    expect(Math.abs(fit.halfAngle / halfAngle - 1)).toBeLessThan(3e-3);
    expect(fit.degreesOfFreedom).toBe(23);
    expect(Math.abs((estimates?.emitted?.value ?? 0) / 60 - 1)).toBeLessThan(3e-3);
  });

  test.each([30, 15])('half angle %d°, from the nine points alone', (halfAngle) => {
    const { tried, estimates } = work(exactBench(lightSource({ halfAngle }), { grid: [3, 3] }));
    expect(Math.abs(fitOf(tried.grid).halfAngle / halfAngle - 1)).toBeLessThan(3e-3);
    expect(Math.abs((estimates?.emitted?.value ?? 0) / 60 - 1)).toBeLessThan(3e-3);
  });

  test('two distances are enough, with nothing left to check the fit', () => {
    const { tried } = work(exactBench(lightSource(), { sweep: [15.24, 60] }));
    expect(fitOf(tried.sweep)).toMatchObject({ degreesOfFreedom: 0 });
    expect(fitOf(tried.sweep).halfAngle).toBeCloseTo(30, 1);
  });

  test('a grid says less of wide beams over a large field than of narrow ones, and says so', () => {
    const spread = (halfAngle: number) => {
      const { tried } = work(exactBench(lightSource({ halfAngle }), { grid: [3, 3] }));
      const it = tried.grid;
      return it && 'fit' in it ? it.fit.standardUncertainty / it.fit.halfAngle : Number.POSITIVE_INFINITY;
    };
    expect(spread(15)).toBeLessThan(spread(30));
    expect(spread(30)).toBeLessThan(spread(45));
    expect(spread(60)).toBeGreaterThan(2 * spread(30));
  });

  test('coarser readings make a wider interval', () => {
    const bench = exactBench(lightSource(), { sweep: SWEEP });
    const [fine, coarse] = [0.005, 0.03].map((repeatability) =>
      fitOf(work({ ...bench, sensor: { ...SENSOR, repeatability } }).tried.sweep),
    );
    expect(coarse?.standardUncertainty).toBeGreaterThan(1.3 * (fine?.standardUncertainty ?? 1));
  });
});

describe('withheld', () => {
  test.each([0, -60, 180, 200, Number.NaN])('a claimed beam angle of %d°', (angle) => {
    expect(reasonOf(claimedOrder(angle))).toContain('not between 0° and 180°');
  });

  test.each([4, 170])('a claimed beam angle of %d°, beyond the model', (angle) => {
    expect(reasonOf(claimedOrder(angle))).toContain('for which the model holds');
  });

  test('a sweep of one distance, read once or twice', () => {
    const bench = exactBench(lightSource(), { sweep: [15.24] });
    expect(reasonOf(work(bench).tried.sweep)).toBe('the sweep has one distance only');
    const twice = exactBench(lightSource(), { sweep: [15.24, 15.24] });
    expect(reasonOf(work(twice).tried.sweep)).toBe('the sweep has one distance only');
  });

  test('a grid of one point, and one whose points are all alike', () => {
    const bench = exactBench(lightSource(), { grid: [3, 3] });
    const grid = { ...(bench.grid as NonNullable<Bench['grid']>) };
    const one = { ...grid, columns: 1, rows: 1, values: [grid.values[4] as number] };
    expect(reasonOf(work({ ...bench, grid: one }).tried.grid)).toBe('the grid has one point only');
    const corners = exactBench(lightSource(), { grid: [2, 2] });
    expect(reasonOf(work(corners).tried.grid)).toMatch(/does not tell the beam|at the end of the range/);
  });

  test('a grid with a hot corner: no beam explains it', () => {
    const bench = exactBench(lightSource(), { grid: [3, 3] });
    const grid = bench.grid as NonNullable<Bench['grid']>;
    const hot = { ...grid, values: grid.values.map((value, i) => (i === 2 ? 1.5 * value : value)) };
    const { tried, choice, estimates } = work({ ...bench, grid: hot });
    expect(reasonOf(tried.grid)).toMatch(/^no beam of an even panel explains the grid: .* % unexplained$/);
    expect(choice).toMatchObject({ withheld: reasonOf(tried.grid) });
    expect(estimates).toBeUndefined();
  });

  test('readings that only a narrower beam than any tried would explain', () => {
    const source = lightSource({ halfAngle: 4.3 });
    expect(reasonOf(work(exactBench(source, { sweep: SWEEP })).tried.sweep)).toBe(
      'the distance sweep fits best at the end of the range searched, at a half angle of 5°',
    );
  });

  test('readings that leave the beam open on a side', () => {
    const source = lightSource({ halfAngle: 65, width: 40, height: 120, columns: 14, rows: 40 });
    expect(reasonOf(work(exactBench(source, { grid: [3, 3] })).tried.grid)).toBe(
      'the grid does not tell the beam: half angles up to 80° fit as well',
    );
  });

  test('a small panel whose light a narrow and a wide beam explain alike', () => {
    const source = lightSource({ halfAngle: 30, width: 8.2, height: 12, columns: 4, rows: 6, ledSize: 0.9 });
    const found = reasonOf(work(exactBench(source, { grid: [3, 3] })).tried.grid);
    expect(found).toMatch(/^two beams explain the grid: half angles of about 1\d° and 30°$/);
  });

  test('nothing to go by', () => {
    expect(chooseOrder({})).toMatchObject({ withheld: 'neither a sweep, nor a grid, nor a claimed beam angle' });
    expect(chooseOrder({ grid: { withheld: 'a' }, claim: { withheld: 'b' } })).toMatchObject({ withheld: 'a; b' });
  });
});

describe('choosing', () => {
  const whole = (source: LightSource, beamAngle: number) =>
    work({ ...exactBench(source, { grid: [3, 3], sweep: SWEEP }), beamAngle });

  test('the sweep before the grid before the claim', () => {
    const { choice, tried } = whole(lightSource(), 60);
    expect(Object.keys(tried)).toEqual(['sweep', 'grid', 'claim']);
    expect(choice).toMatchObject({ chosen: { source: 'sweep' }, warnings: [] });
    expect(work({ ...exactBench(lightSource(), { grid: [3, 3] }), beamAngle: 60 }).choice).toMatchObject({
      chosen: { source: 'grid' },
    });
    expect(work({ ...exactBench(lightSource(), {}), beamAngle: 60 }).choice).toMatchObject({
      chosen: { source: 'claim', halfAngle: 30 },
    });
  });

  test('a claim that the readings contradict is called out', () => {
    const { choice } = whole(lightSource(), 120);
    expect(choice.warnings).toHaveLength(2);
    expect(choice.warnings[0]).toMatch(
      /^the distance sweep gives a half angle of 30° \(\d+° to \d+°\), while the claimed beam angle gives a half angle of 60° \(48° to 72°\): the two disagree$/,
    );
  });

  /** A palm-sized panel of wide beams, whose nine points two beams explain. */
  const ambiguous = exactBench(lightSource({ halfAngle: 60, width: 10, height: 10, columns: 5, rows: 5 }), {
    grid: [3, 3],
  });

  test('a grid that leaves the beam open hands over to a claim that it allows', () => {
    const { choice, tried, estimates } = work({ ...ambiguous, beamAngle: 120 });
    expect(tried.grid).toMatchObject({ withheld: expect.any(String), allowed: expect.any(Array) });
    expect(choice).toMatchObject({ chosen: { source: 'claim', halfAngle: 60 } });
    expect(estimates?.emitted?.value).toBeGreaterThan(0);
  });

  test('but not to one that it rules out', () => {
    const { choice, estimates } = work({ ...ambiguous, beamAngle: 36 });
    expect(choice).toMatchObject({ withheld: expect.stringMatching(/; the claimed beam angle is none that/) });
    expect(estimates).toBeUndefined();
  });

  test('a grid that no beam explains leaves nothing to trust, whatever is claimed', () => {
    const bench = exactBench(lightSource(), { grid: [3, 3], sweep: SWEEP });
    const grid = bench.grid as NonNullable<Bench['grid']>;
    const hot = { ...grid, values: grid.values.map((value, i) => (i === 2 ? 1.5 * value : value)) };
    const { choice, tried, estimates } = work({ ...bench, grid: hot, beamAngle: 60 });
    expect(tried.grid).toMatchObject({ allowed: [] });
    expect('fit' in (tried.sweep ?? {})).toBe(true);
    expect(choice).toMatchObject({ withheld: expect.stringMatching(/^no beam of an even panel explains the grid/) });
    expect(estimates).toBeUndefined();
  });
});
