import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ViewWindow } from '../../../../src/site/files/browser/view-window.ts';

describe('what is in view', () => {
  test('goes closer about a place, which stays where it is', () => {
    const view = new ViewWindow([0, 100], 1000);
    view.zoom(2, 25);
    expect([view.from, view.to]).toEqual([12.5, 62.5]);
    expect((25 - view.from) / (view.to - view.from)).toBeCloseTo(0.25, 12);
  });

  test('on an axis of logarithms as well', () => {
    const view = new ViewWindow([50, 12_800], 1000, { isLogarithmic: true });
    view.zoom(2, 800);
    expect(Math.log(view.to / view.from)).toBeCloseTo(Math.log(256) / 2, 12);
    expect(Math.log(800 / view.from) / Math.log(view.to / view.from)).toBeCloseTo(0.5, 12);
  });

  test('never leaves the axis, and never goes closer than a few readings', () => {
    const acts = fc.oneof(
      fc.tuple(fc.constant('zoom' as const), fc.double({ min: 0.01, max: 100, noNaN: true })),
      fc.tuple(fc.constant('move' as const), fc.double({ min: -5, max: 5, noNaN: true })),
      fc.tuple(fc.constant('show' as const), fc.double({ min: 350, max: 1000, noNaN: true })),
    );
    fc.assert(
      fc.property(fc.array(acts, { maxLength: 20 }), (all) => {
        const view = new ViewWindow([350, 1000], 1301, { first: [600, 1000] });
        for (const [what, by] of all) {
          if (what === 'zoom') view.zoom(by, (view.from + view.to) / 2);
          else if (what === 'move') view.move(by);
          else {
            view.show(by);
            expect(by).toBeGreaterThanOrEqual(view.from - 1e-9);
            expect(by).toBeLessThanOrEqual(view.to + 1e-9);
          }
          expect(view.from).toBeGreaterThanOrEqual(350 - 1e-9);
          expect(view.to).toBeLessThanOrEqual(1000 + 1e-9);
          expect(view.to - view.from).toBeGreaterThan(3.9);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('goes back to what was in view first, and from there to everything', () => {
    const view = new ViewWindow([350, 1000], 1301, { first: [600, 1000] });
    view.zoom(4, 900);
    view.reset();
    expect([view.from, view.to, view.isWhole]).toEqual([600, 1000, false]);
    view.reset();
    expect([view.from, view.to, view.isWhole]).toEqual([350, 1000, true]);
  });
});
