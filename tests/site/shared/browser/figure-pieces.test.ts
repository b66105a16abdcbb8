import { describe, expect, test } from 'vitest';
import { figurePieces, markPieces } from '../../../../src/site/shared/browser/figure-pieces.ts';
import { piecesHtml } from '../../../../src/site/shared/html.ts';
import { type FigureWords, figureWords, pricedAs } from '../../../../src/words/figure-words.ts';
import { say } from '../../../../src/words/say.ts';
import { figure, line } from '../../../measure/make.ts';

const markup = (it: FigureWords, at = {}) => piecesHtml(figurePieces(it, at)).text;
const worded = { currency: 'EUR', say };
const DOUBT = { mark: '†', label: 'in doubt, see the flags' };

describe('a figure in pieces', () => {
  test('value, half of the interval, unit; the value leads to its calculation', () => {
    const words = figureWords(figure(84.3, [line('a', 9.2 / 1.959963985)]), worded);
    expect(markup(words)).toBe('<span>84<i> ± 9</i> W</span>');
    expect(markup(words, { href: '#optical-power' })).toBe('<a href="#optical-power">84<i> ± 9</i> W</a>');
  });

  test('its mark stands behind it and leads to the flags, those of its panel where a page shows several', () => {
    const shown = { value: '84', unit: '', text: '84' };
    expect(markup({ shown, dagger: DOUBT })).toBe(
      '<span>84</span><a class="dagger" href="#flags" aria-label="in doubt, see the flags">†</a>',
    );
    expect(markup({ shown, dagger: DOUBT }, { flagsAt: '/panels/a/#flags', of: 'A "1"', remark: 'tie' })).toBe(
      '<span>84</span><a class="dagger" href="/panels/a/#flags" aria-label="A &quot;1&quot;: in doubt, see the flags">†</a><small> tie</small>',
    );
    expect(markPieces(undefined)).toEqual([]);
  });

  test('an interval that is not symmetric, a remark, and why ± is not known stand smaller behind it', () => {
    const shown = { value: '84', interval: '80 to 95', unit: 'W', text: '84 W (80 to 95)' };
    expect(markup({ shown }, { remark: 'at 50 Hz' })).toBe('<span>84 W</span><small> (80 to 95) at 50 Hz</small>');
    expect(markup({ shown: { value: '84', unit: 'W', text: '84 W' }, absent: 'no meter is named' })).toBe(
      '<span>84 W</span><small> ± not known: no meter is named</small>',
    );
  });

  test('both units, the other one hidden; a remark that is the same for both once', () => {
    const words = figureWords({ ...figure(25.4), unit: 'cm' }, worded);
    expect(markup(words)).toMatch(/^<span data-u="cm">25\.4 cm<\/span><span data-u="in" hidden> 10 in<\/span>$/);
  });

  test('a price in both currencies, each with its own remark', () => {
    const price = figureWords({ ...figure(62), unit: 'currency' }, { ...worded, priced: pricedAs('£52') });
    expect(markup(price, { remark: '£52, 2 Nov', otherRemark: '€62, 2 Nov' })).toBe(
      '<span data-u="base">€62</span><span data-u="priced" hidden> £52</span><small data-u="base"> £52, 2 Nov</small><small data-u="priced" hidden> €62, 2 Nov</small>',
    );
  });

  test('a gap is its reason, and never a link', () => {
    expect(markup(figureWords(undefined, worded), { href: '#a' })).toBe('<span class="gap">not measured</span>');
    expect(markup({ gap: '–' }, { remark: 'the meter was lent <out>' })).toBe(
      '<span class="gap">–</span><small> the meter was lent &lt;out&gt;</small>',
    );
  });

  test('the day that it is from stands behind it, in words', () => {
    const old = { ...figure(84.3), carriedOver: { from: ['2026-11-10'], isWhole: true } };
    expect(markup(figureWords(old, worded), { remark: 'peak' })).toBe(
      '<span>84.3 W</span><small class="carried"> from 10 Nov 2026</small><small> peak</small>',
    );
  });
});
