import { expect, test } from 'vitest';
import { retinaResult } from '../../../src/measure/exposure/retina.ts';
import { CITATIONS } from '../../../src/words/limits/citations.ts';
import { say } from '../../../src/words/say.ts';
import { sentenceOf } from '../../support/sentence-of.ts';

test('nothing is concluded of the retina: a gap, with the measurement that it would take', () => {
  const result = retinaResult();
  const { figure, hazard, limit } = result;
  const sentence = sentenceOf(result);
  expect(figure).toEqual({ gap: true, metric: 'retinal-hazard', reason: { code: 'retina-needs-radiance' } });
  expect(say({ code: 'retina-needs-radiance' })).toBe('needs radiance; only irradiance on a plane was measured');
  expect(sentence).toContain('assigns no risk group');
  expect(sentence).toContain('radiance within a stated angle of acceptance, through a stated aperture, at 200 mm');
  expect(sentence).toContain('no weak visual stimulus');
  expect(hazard).toBe('retina');
  expect(limit).toBe('retina');
  expect(CITATIONS.retina.standing).toBe('memory');
});
