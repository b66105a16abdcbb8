import { describe, expect, it } from 'vitest';
import { METHODS } from '../../../src/measure/methods.ts';
import { foldSections } from '../../../src/site/methods/fold-sections.ts';
import { METHOD_GROUPS } from '../../../src/site/methods/method-groups.ts';
import { SKETCH_OF, SKETCHES } from '../../../src/site/methods/sketches/index.ts';
import { sketchDrawing } from '../../../src/site/methods/sketches/sketch.ts';
import { piecesHtml } from '../../../src/site/shared/html.ts';

describe('the list of methods', () => {
  const listed = METHOD_GROUPS.flatMap((it) => it.methods.map(([id]) => id));

  it('has every method, in one group each', () => {
    expect(listed.toSorted()).toEqual(METHODS.map((it) => it.id).toSorted());
  });

  it('says of each in a line what it is', () => {
    for (const [id, line] of METHOD_GROUPS.flatMap((it) => it.methods)) {
      expect(line.length, id).toBeLessThanOrEqual(60);
      expect(line, id).toMatch(/^[A-Z].*\.$/);
    }
  });
});

describe('sketches', () => {
  it.each(Object.entries(SKETCHES))('%s has words, and draws nothing beside its frame', (_, sketch) => {
    expect(sketch.words.split(' ').length).toBeGreaterThan(12);
    const drawing = piecesHtml([sketchDrawing(sketch)]).text;
    const numbers = (pattern: RegExp) => [...drawing.matchAll(pattern)].map((it) => Number(it[1]));
    for (const x of numbers(/ (?:x|x1|x2|cx)="(-?[\d.]+)"/g)) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(sketch.width);
    }
    // A letter of the small print is about 6.2 wide.
    for (const [, at = '', anchor, words = ''] of drawing.matchAll(/<text x="([\d.]+)"[^>]*anchor="(\w+)">([^<]*)/g)) {
      const length = 6.2 * words.length;
      const from = anchor === 'end' ? Number(at) - length : anchor === 'middle' ? Number(at) - length / 2 : Number(at);
      expect(from, words).toBeGreaterThanOrEqual(-4);
      expect(from + length, words).toBeLessThanOrEqual(sketch.width + 24);
    }
    expect(numbers(/ (?:y|y1|y2|cy)="(-?[\d.]+)"/g).every((y) => y >= -6 && y <= sketch.height)).toBe(true);
  });

  it('stand on pages of methods', () => {
    expect(new Set(Object.values(SKETCH_OF))).toEqual(new Set(Object.keys(SKETCHES)));
  });

  it('draw beams as wide as they say', () => {
    // I(θ) = cos^m θ is at half at the half-angle: m = -ln 2 / ln cos(half-angle), from its definition.
    const outline = piecesHtml([sketchDrawing(SKETCHES.beam)]).text;
    const [narrow = ''] = [...outline.matchAll(/class="accent" d="M([^"]*)Z"/g)].map((it) => it[1]);
    const points = narrow.split('L').map((it) => it.split(' ').map(Number));
    const reach = (angle: number) => {
      const nearest = points
        .map(([x = 0, y = 0]) => ({ angle: Math.atan2(y - 95, x - 30), length: Math.hypot(x - 30, y - 95) }))
        .filter((it) => it.length > 1)
        .toSorted((a, b) => Math.abs(a.angle - angle) - Math.abs(b.angle - angle))[0];
      return nearest?.length ?? 0;
    };
    expect(reach(Math.PI / 6) / reach(0)).toBeCloseTo(0.5, 1);
  });
});

describe('sections of a method', () => {
  const prose =
    '<p>First.</p><h2 id="how-it-is-measured">How it is measured</h2><p>By a meter.</p><h2 id="sources">Sources</h2><p>A <b>book</b>.</p><h2 id="caution">Caution</h2><p>Eyes.</p>';
  const { open, folded } = foldSections(prose);

  it('stay open where they tell what is read and what to beware of', () => {
    expect(open).toBe(
      '<p>First.</p><h2 id="how-it-is-measured">How it is measured</h2><p>By a meter.</p><h2 id="caution">Caution</h2><p>Eyes.</p>',
    );
  });

  it('are folded otherwise under their own heading, with their anchor', () => {
    expect(folded).toBe(
      '<details class="fold"><summary><h2 id="sources">Sources</h2></summary><p>A <b>book</b>.</p></details>',
    );
  });
});
