import { describe, expect, test } from 'vitest';
import { guideAgreement } from '../../../src/ledger/agreement.ts';
import { agreementView } from '../../../src/site/agreement/agreement-view.ts';
import { demoLedger } from '../../support/demo-ledger.ts';

describe('the drawing of shared figures', () => {
  test('has one scale for all lines: two values are as far apart as their E_n', () => {
    const { ledger, content } = demoLedger();
    const views = content.others.map((it) => agreementView(guideAgreement(ledger, it), ledger.guide.currency));
    const lines = views.flatMap((it) => it.panels.flatMap((panel) => [...panel.apart, ...panel.agreeing]));
    expect(lines.length).toBeGreaterThan(100);
    const apart = lines.filter((it) => Math.abs(it.enValue) > 0.5);
    expect(apart.length).toBeGreaterThan(3);
    const scales = apart.map(({ drawn, enValue }) => (drawn.own.value - drawn.other.value) / enValue);
    for (const it of scales) expect(it / (scales[0] ?? 0)).toBeCloseTo(1, 1);
    for (const { drawn } of lines) {
      for (const it of [drawn.own, drawn.other]) {
        expect(it.low).toBeGreaterThanOrEqual(0);
        expect(it.high).toBeLessThanOrEqual(100);
        expect(it.value).toBeGreaterThanOrEqual(it.low);
        expect(it.value).toBeLessThanOrEqual(it.high);
      }
    }
  });
});
