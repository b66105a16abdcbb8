import { expect, test } from 'vitest';
import { NO_INSTRUMENT } from '../../../src/measure/instrument/instrument.ts';
import { runningCostFigure } from '../../../src/measure/money/running-cost.ts';
import { figure, line, vague } from '../make.ts';

const draw = figure(400, [line('mains', 4)], 'mains-draw-combined');

test('an hour costs the draw in kW times the tariff', () => {
  const it = runningCostFigure('lantern-40/2026-03-02', draw, 0.3, 'EUR');
  expect(it).toMatchObject({
    id: 'lantern-40/2026-03-02/running-cost',
    unit: 'currency/h',
    method: 'running-cost@1',
    calculation: '400 W ÷ 1000 × 0.3 EUR/kWh = 0.12 EUR/h',
  });
  expect(it.value).toBeCloseTo(0.12, 12);
});

test('its uncertainty is that of the draw: the tariff is exact', () => {
  const it = runningCostFigure('s', draw, 0.3, 'EUR');
  expect(it.standardUncertainty).toBeCloseTo(0.0012, 12);
  expect(runningCostFigure('s', vague(400, NO_INSTRUMENT), 0.3, 'EUR').uncertaintyAbsent).toBe(NO_INSTRUMENT);
});

test('at a tariff of nothing it costs nothing', () => {
  expect(runningCostFigure('s', draw, 0, 'EUR')).toMatchObject({ value: 0, standardUncertainty: 0 });
});
