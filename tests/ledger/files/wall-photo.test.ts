import { describe, expect, test } from 'vitest';
import type { AnyReadFile } from '../../../src/content/read/files/file-kind.ts';
import { type FileContext, findAnew } from '../../../src/ledger/files/file-maker.ts';
import { wallPhotoMaker } from '../../../src/ledger/files/wall-photo.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import type { Tones } from '../../../src/measure/wall/srgb.ts';
import type { WallLight } from '../../../src/measure/wall/straighten.ts';

const [COLUMNS, ROWS] = [160, 120];

/** Light that falls off to the right, with dots of a pitch of 2 cm. */
function light(clipped = 0, tones: Tones = 'automatic', dots = 0.1): WallLight {
  const red = Float32Array.from({ length: COLUMNS * ROWS }, (_, i) => {
    const x = ((i % COLUMNS) * 32) / COLUMNS;
    return (0.6 - 0.012 * x) * (1 + dots * Math.cos(Math.PI * x));
  });
  const none = new Float32Array(COLUMNS * ROWS);
  return {
    ...{ columns: COLUMNS, rows: ROWS, width: 32, height: 24, tones, clipped, black: 0, red, green: none, blue: none },
    corners: [
      [0, 0],
      [160, 0],
      [160, 120],
      [0, 120],
    ],
    picture: { width: 160, height: 120 },
  };
}

/** 16 LEDs across 30.4 cm, 2 cm apart, 0.4 cm wide. */
const LEDS = { columns: 16, rows: 12, staggered: false, size: { value: 0.4 } };

function made(of: WallLight, leds: object | null = LEDS, claims: object = {}) {
  const files = [
    { kind: 'wallPhoto', name: 'wall.jpg', field: ['wallPhoto'], entry: {}, data: () => ({ light: of }) },
  ] as unknown as AnyReadFile[];
  const context = {
    id: 'p/2026-01-02',
    panel: { ...(leds && { leds }), claims },
    field: { width: { value: 30.4 }, height: { value: 22.4 } },
    distance: { distance: 15.24 },
    findIn: findAnew,
  } as unknown as FileContext;
  const { figures, view, flags } = wallPhotoMaker.make(files, context);
  const byMetric = new Map(figures.map((it) => [it.metric, it]));
  return { view, figures, figure: (metric: string) => byMetric.get(metric as never), flags: flags?.(byMetric) ?? [] };
}

describe('a photo of the wall', () => {
  test('gives figures in percent, whose interval rests on the camera’s tones', () => {
    const [telephone, raw] = (['automatic', 'srgb'] as const).map((it) => made(light(0, it)).figure('wall-variation'));
    if (!isFigure(telephone) || !isFigure(raw)) throw new Error('no figure');
    expect(telephone.value).toBe(raw.value);
    expect(telephone.standardUncertainty).toBeGreaterThan(2 * (raw.standardUncertainty ?? 0));
    expect(telephone.notes[0]).toEqual({ code: 'camera-no-meter' });
    expect(telephone.unassessed.map((it) => it.what)).toContainEqual({ code: 'near-infrared-unseen' });
  });

  test('finds the dots at the pitch of counted LEDs, or of as many as are claimed', () => {
    for (const { figure } of [made(light()), made(light(), null, { ledCount: 192 })]) {
      const dots = figure('wall-dot-pattern');
      expect(isFigure(dots) && dots.value).toBeCloseTo(10, 0);
      expect(isFigure(dots) && dots.bound).toBeUndefined();
    }
  });

  test('gives a bound where no dots stand out, and a gap where the pitch is not known', () => {
    expect(made(light(0, 'automatic', 0)).figure('wall-dot-pattern')).toMatchObject({ value: 0.5, bound: 'below' });
    expect(made(light(), null).figure('wall-dot-pattern')).toMatchObject({ reason: { code: 'leds-not-counted' } });
  });

  test('is in doubt where it is clipped, and withheld where it is by much', () => {
    const little = made(light(0.004));
    expect(isFigure(little.figure('wall-variation'))).toBe(true);
    expect(little.flags).toMatchObject([{ severity: 'doubt', finding: { percent: 0.4, isWithheld: false } }]);
    const much = made(light(0.02));
    expect(much.figures.some(isFigure)).toBe(false);
    expect(much.flags).toMatchObject([{ finding: { isWithheld: true } }]);
    expect(made(light()).flags).toEqual([]);
  });

  test('has each channel beside luminance, dark ones left out', () => {
    const { signals } = made(light()).view;
    expect(signals.map((it) => it.signal)).toEqual(['luminance', 'red']);
    expect(signals[0]?.evenness.variation).toBeCloseTo(signals[1]?.evenness.variation ?? 0, 6);
  });
});
