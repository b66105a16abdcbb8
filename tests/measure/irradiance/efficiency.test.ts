import { describe, expect, test } from 'vitest';
import {
  type EfficiencyInputs,
  efficiencyFigure,
  netEfficiencyFigure,
} from '../../../src/measure/irradiance/efficiency.ts';
import { verbatim } from '../../../src/measure/statement.ts';
import { IMPOSSIBLE_EFFICIENCY } from '../../../src/measure/thresholds.ts';
import { makeFigure } from '../../../src/measure/uncertainty.ts';
import { expectToMeet } from '../../references/check-value.ts';
import { RED_LED_LIMIT, RED_LED_LIMIT_PHOTONS } from '../../references/efficiency.ts';
import { componentOf, figure, identity, line } from '../make.ts';

const power = figure(90, [line('sensor/calibration', 4.5)]);
const draw = (watts: number) => figure(watts, [line('mains/calibration', 0.01 * watts)], 'mains-draw');
const peak = (value: number) => figure(value, [line('sensor/calibration', 0.05 * value)], 'peak', 'mW/cm²');
const session = 'lantern-40/2026-03-02';
const combined: EfficiencyInputs = { session, mode: 'combined', power, draw: draw(360) };
const red: EfficiencyInputs & Required<Pick<EfficiencyInputs, 'peaks'>> = {
  session,
  mode: 'red',
  power,
  draw: draw(180),
  peaks: { mode: peak(60), combined: peak(100) },
};

describe('efficiency', () => {
  test('is optical power over draw, in %', () => {
    const it = efficiencyFigure(combined);
    expect(it).toMatchObject({
      id: `${session}/efficiency-combined`,
      metric: 'efficiency-combined',
      value: 25,
      unit: '%',
      calculation: 'η = 90 W ÷ 360 W = 25 %',
      notes: [],
    });
    expect((it.standardUncertainty ?? Number.NaN) / 25).toBeCloseTo(Math.hypot(0.05, 0.01), 12);
  });

  test('of one channel is scaled by the peaks, and tells so', () => {
    const it = efficiencyFigure(red);
    expect(it.value).toBeCloseTo(30, 12);
    expect(it.calculation).toBe('η = 90 W × 60 ÷ 100 ÷ 180 W = 30 %');
    expect(it.notes).toEqual([{ code: 'scaled-by-peaks' }]);
    expect(it.inputs).toHaveLength(4);
  });

  test('of one channel counts the sensor’s calibration once: in the peaks it cancels', () => {
    expect(componentOf(efficiencyFigure(red), 'sensor/calibration').contribution).toBeCloseTo(30 * 0.05, 12);
  });

  test('is not changed by a common factor on power and draw', () => {
    const doubled = efficiencyFigure({ ...combined, power: figure(180), draw: draw(720) });
    expect(doubled.value).toBeCloseTo(efficiencyFigure(combined).value, 12);
  });
});

describe('net efficiency', () => {
  test('takes standby off the draw', () => {
    const it = netEfficiencyFigure(combined, draw(10));
    expect(it?.metric).toBe('efficiency-combined-net');
    expect(it?.value).toBeCloseTo(9000 / 350, 12);
    expect(it?.calculation).toBe('η = 90 W ÷ (360 W − 10 W) = 25.71 %');
  });

  test('is never below the gross one', () => {
    for (const standby of [0, 1, 50, 359]) {
      const net = netEfficiencyFigure(combined, draw(standby));
      expect(net?.value).toBeGreaterThanOrEqual(efficiencyFigure(combined).value - 1e-12);
    }
  });

  test('counts the mains meter’s calibration as one error of draw and standby', () => {
    const it = netEfficiencyFigure(combined, draw(60));
    // (360 − 60) W moves by 1 %, not by the root of 3.6² + 0.6².
    expect(componentOf(it ?? figure(0), 'mains/calibration').contribution).toBeCloseTo(-30 * 0.01, 12);
  });

  test('is not there where standby leaves nothing to divide by', () => {
    expect(netEfficiencyFigure(combined, draw(359.9))).toBeDefined();
    expect(netEfficiencyFigure(combined, draw(360))).toBeUndefined();
    expect(netEfficiencyFigure(combined, draw(400))).toBeUndefined();
  });

  test('is not there where the meter does not tell the draw from standby', () => {
    const shown = (watts: number, name: string) => figure(watts, [line(name, 0.1)], 'mains-draw');
    // 0.2 W and 0.3 W, with a 95 % interval of 0.28 W either way.
    expect(netEfficiencyFigure({ ...combined, draw: shown(1.4, 'on') }, shown(1.2, 'off'))).toBeUndefined();
    expect(netEfficiencyFigure({ ...combined, draw: shown(1.5, 'on') }, shown(1.2, 'off'))).toBeDefined();
  });

  test('stays a bound where standby is one: less standby, less efficiency', () => {
    const standby = makeFigure({ ...identity('mains-draw'), bound: 'below' }, 0.5, {
      absent: verbatim('the reading is a bound'),
    });
    const it = netEfficiencyFigure(combined, standby);
    expect(it).toMatchObject({ bound: 'below', standardUncertainty: null });
  });
});

describe('the limit of red LEDs', () => {
  test(RED_LED_LIMIT.label, () => expectToMeet(IMPOSSIBLE_EFFICIENCY, RED_LED_LIMIT));

  test(RED_LED_LIMIT_PHOTONS.label, () => {
    // Planck and Avogadro constants and the speed of light of the SI; µmol/J = 1e-3 λ/nm ÷ (h c N_A in J m/mol).
    const molarEnergy = 6.62607015e-34 * 299792458 * 6.02214076e23;
    const { wavelength } = RED_LED_LIMIT_PHOTONS.arguments;
    expectToMeet((IMPOSSIBLE_EFFICIENCY * wavelength * 1e-3) / molarEnergy, RED_LED_LIMIT_PHOTONS);
  });
});
