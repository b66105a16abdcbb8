import { beforeAll, describe, expect, test } from 'vitest';
import { madeOf } from '../../../src/ledger/files/file-maker.ts';
import type { Figure } from '../../../src/measure/figure.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import type { MetricId } from '../../../src/measure/metrics.ts';
import { logViews } from '../../../src/site/files/log-views.ts';
import { say } from '../../../src/words/say.ts';
import { type Demo, demoLedger } from '../../support/demo-ledger.ts';
import { tracedPoints } from '../../support/traced-points.ts';

let demo: Demo;
beforeAll(() => {
  demo = demoLedger();
});

const session = (slug: string) => {
  const [first] = demo.panel(slug).sessions;
  if (!first) throw new Error(slug);
  return first;
};
const figure = (slug: string, metric: MetricId): Figure => {
  const it = session(slug).figures.get(metric);
  if (!isFigure(it)) throw new Error(`${slug} has no ${metric}`);
  return it;
};
const flag = (slug: string, check: string) => session(slug).flags.find((it) => it.check === check);

describe('the demonstration’s logs', () => {
  test('give peaks, with the typed reading beside and no quarrel between the two', () => {
    for (const [slug, peak] of [
      ['ruddlestone-r150', 83.9],
      ['ostrel-vagg', 46.3],
      ['quennick-tope', 60.4],
    ] as const) {
      const it = figure(slug, 'peak-irradiance-combined');
      expect(Math.abs(it.value - peak)).toBeLessThan(0.5);
      expect(it.inputs).toEqual([`${session(slug).id}/sweeps[0]`, `${session(slug).id}/mismatch-factor-combined`]);
      expect(flag(slug, 'file-against-typed')).toBeUndefined();
    }
  });

  test('name a spike of one sample, and leave it out of the peak alone', () => {
    const spike = flag('ostrel-vagg', 'sweep-spike');
    expect(spike).toMatchObject({ severity: 'note', concerns: ['peak-irradiance-combined'] });
    expect(spike && say(spike.finding)).toContain('61.8 mW/cm², lasted one sample');
    const factor = figure('ostrel-vagg', 'mismatch-factor-combined').value;
    expect(figure('ostrel-vagg', 'sweep-maximum-combined').value / factor).toBeCloseTo(61.8, 9);
    expect(flag('quennick-tope', 'sweep-spike')).toBeUndefined();
  });

  test('find the panel that was read before it had settled, and by how much', () => {
    const early = flag('ruddlestone-r150', 'grid-before-settled');
    // 7 % exp(-t / 1500 s), read at 45 min, against the mean of the last 15 of 100 min.
    const above = (t: number) => 7 * Math.exp(-t / 1500);
    const last = (1500 / 900) * (above(5100) - above(6000));
    expect(early?.finding).toMatchObject({ warmUp: 2700, excess: expect.closeTo(above(2700) - last, 1) });
    for (const slug of ['ostrel-vagg', 'quennick-tope']) expect(flag(slug, 'grid-before-settled')).toBeUndefined();
  });

  test('fit one exponential where there is one, and none where there are two', () => {
    const constant = figure('ostrel-vagg', 'warm-up-constant');
    expect(Math.abs(constant.value - 520)).toBeLessThan(3 * (constant.standardUncertainty ?? 0));
    const tope = session('quennick-tope').figures.get('warm-up-constant');
    expect(tope).toMatchObject({ gap: true, reason: { code: 'warm-up-no-fit', why: 'not-exponential' } });
    expect(figure('quennick-tope', 'warm-up-drop').value).toBeCloseTo(100 * (1 - 1 / 1.06), 0);
  });

  test('give depth and frequency of flicker, within what the typed readings leave', () => {
    for (const [slug, hertz, percent] of [
      ['ruddlestone-r150', 65_000, 0.8],
      ['ostrel-vagg', 54_000, 1.2],
      ['quennick-tope', 60_000, 0.9],
    ] as const) {
      const frequency = figure(slug, 'flicker-frequency-combined');
      expect(Math.abs(frequency.value - hertz)).toBeLessThan(4 * (frequency.standardUncertainty ?? 0));
      expect(figure(slug, 'flicker-combined').value).toBeCloseTo(percent, 1);
      expect(figure(slug, 'flicker-combined').inputs).toEqual([`${session(slug).id}/waveforms.combined`]);
      expect(flag(slug, 'flicker-fraction')).toBeUndefined();
    }
  });

  test('have the nine points of the grid in one go, as they were typed', () => {
    const [, run] = madeOf(session('ruddlestone-r150').made, 'sweeps')?.view ?? [];
    expect(run?.grid?.points).toHaveLength(9);
    expect(run?.givesPeak).toBe(false);
  });

  test('give nothing to panels without them', () => {
    for (const metric of ['warm-up-drop', 'sweep-maximum-combined', 'flicker-index-combined'] as const) {
      expect(session('kelpwright-gannet').figures.get(metric)).toMatchObject({ gap: true });
    }
    expect(logViews(session('kelpwright-gannet'))).toEqual([]);
  });
});

describe('what a page shows of a log', () => {
  test('is the answer first, in one or two sentences', () => {
    const views = logViews(session('ruddlestone-r150'));
    expect(views.map((it) => it.heading)).toEqual([
      'From cold',
      'Sweep over the face, both channels',
      'Grid in one go, both channels',
      'Flicker, both channels',
    ]);
    expect(views[0]?.answer).toMatch(
      /^Warm, the panel gives 6\.\d % less light than cold; it settles within 4\d min\. The readings began after 45 min, when it was still (0\.9\d|1) % above that\.$/,
    );
    expect(views[2]?.answer).toContain('All 9 points');
    expect(views[3]?.answer).toContain('at 65 kHz');
  });

  test('is drawn within its frame', () => {
    for (const slug of ['ruddlestone-r150', 'ostrel-vagg', 'quennick-tope']) {
      for (const { plot } of logViews(session(slug))) {
        if (!plot) throw new Error('no plot');
        const { frame } = plot;
        const numbers = plot.curves.flatMap((it) => tracedPoints(it.path));
        expect(numbers.length).toBeGreaterThan(8);
        for (const [x, y] of numbers) {
          expect(x).toBeGreaterThanOrEqual(frame.left - 0.1);
          expect(x).toBeLessThanOrEqual(frame.right + 0.1);
          expect(y).toBeGreaterThanOrEqual(frame.top - 0.1);
          expect(y).toBeLessThanOrEqual(frame.bottom + 0.1);
        }
      }
    }
  });
});
