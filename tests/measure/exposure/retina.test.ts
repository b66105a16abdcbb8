import { expect, test } from 'vitest';
import { sentenceOf } from '../../../src/measure/exposure/limit.ts';
import { retinaResult } from '../../../src/measure/exposure/retina.ts';

test('nothing is concluded of the retina: a gap, with the measurement that it would take', () => {
  const result = retinaResult();
  const { figure, caution, limit } = result;
  const sentence = sentenceOf(result);
  expect(figure).toMatchObject({ gap: true, metric: 'retinal-hazard' });
  expect(sentence).toContain('assigns no risk group');
  expect(sentence).toContain('radiance within a stated angle of acceptance, through a stated aperture, at 200 mm');
  expect(sentence).toContain('no weak visual stimulus');
  expect(caution).toBe('eyes');
  expect(limit?.standing).toBe('memory');
});
