import { describe, expect, test } from 'vitest';
import { METHODS } from '../../../src/measure/methods.ts';
import { formula } from '../../../src/site/shared/formula.ts';

describe('formula', () => {
  test('is MathML, with the formula in the text for screen readers and no style of its own', () => {
    const html = formula('P = \\bar{E}\\,A');
    expect(html).toContain('<math');
    expect(html).toContain('<mi>P</mi>');
    expect(html).not.toMatch(/style=|<svg|class="katex-html"/);
    expect(html).not.toContain('display="block"');
    expect(formula('P = \\bar{E}\\,A', true)).toContain('display="block"');
  });

  test('comes as one each where they stand apart, and no search finds its TeX', () => {
    const html = formula('a=1,\\qquad b=2,\\qquad c=3', true);
    expect(html.match(/<math/g)).toHaveLength(3);
    expect(html.match(/<span class="katex" data-pagefind-ignore>/g)).toHaveLength(3);
    expect(formula('a=1,\\qquad b=2').match(/<math/g)).toHaveLength(1);
  });

  test('of TeX that is none is a fault of the program', () => {
    expect(() => formula('\\frac{1}{')).toThrow();
    expect(() => formula('\\nosuchcommand')).toThrow();
  });

  test('every formula and every symbol of the registry can be set', () => {
    for (const method of METHODS) {
      for (const tex of [...(method.formula ? [method.formula] : []), ...method.symbols.map(([symbol]) => symbol)])
        expect(formula(tex, true), `${method.id}: ${tex}`).toContain('<math');
    }
  });
});
