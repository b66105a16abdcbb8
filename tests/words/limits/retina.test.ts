import { expect, test } from 'vitest';
import { retinaResults } from '../../../src/measure/exposure/retina.ts';
import { isFigure } from '../../../src/measure/figure.ts';
import { CITATIONS } from '../../../src/words/limits/citations.ts';
import { heldName } from '../../../src/words/limits/row-words.ts';
import { say } from '../../../src/words/say.ts';
import { demoLedger } from '../../support/demo-ledger.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

test('without a spectrum nothing is concluded of the retina: a gap, with the measurement that it would take', () => {
  const [result, ...others] = retinaResults('p/d', undefined);
  if (!result) throw new Error('no result');
  const { figure, hazard, limit } = result;
  const sentence = sentenceOf(result);
  expect(others).toEqual([]);
  expect(figure).toEqual({ gap: true, metric: 'retinal-hazard', reason: { code: 'retina-needs-radiance' } });
  expect(say({ code: 'retina-needs-radiance' })).toBe('needs radiance; only irradiance on a plane was measured');
  expect(sentence).toContain('assigns no risk group');
  expect(sentence).toContain('radiance within a stated angle of acceptance, through a stated aperture, at 200 mm');
  expect(sentence).toContain('no weak visual stimulus');
  expect(hazard).toBe('retina');
  expect(limit).toBe('retina');
  expect(CITATIONS.retina.standing).toBe('memory');
});

test('bounds name what they rest on, and a bound from below is said to be no all-clear', () => {
  const demo = demoLedger();
  const told = (slug: string) =>
    (demo.panel(slug).current?.limits ?? []).flatMap((it) => (it.hazard === 'retina' ? [it] : []));
  const r150 = told('ruddlestone-r150');
  expect(r150.map((it) => [heldName(it), it.end])).toEqual([
    ['retina, near-infrared alone', 'least'],
    ['retina, near-infrared alone', 'most'],
    ['retina, both channels', 'least'],
    ['retina, both channels', 'most'],
  ]);
  const [least, most] = r150.map(sentenceOf);
  expect(least).toMatch(
    /at least 3\d(\.\d+)? % of the limit for a weak visual stimulus\. .*equally bright.*is no all-clear/,
  );
  expect(least).toContain('averaged over 11 mrad');
  expect(most).toMatch(/at most 10\d\d %, at the cautious end .* as if one emitter gave all the light there/);
  // Nobody typed how its emitters look.
  const tope = told('quennick-tope');
  expect(tope.map((it) => it.end)).toEqual(['least', 'least']);
  expect(tope.map(sentenceOf)[0]).toContain('if the whole field were evenly bright');
  expect(told('kelpwright-gannet').map((it) => isFigure(it.figure))).toEqual([false]);
});
