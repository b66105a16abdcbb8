import { describe, expect, it } from 'vitest';
import { channelIrradiance, type LightSource, lambertianExponent, placeLeds, truthOf } from './light-source.ts';

const ONE: LightSource = {
  width: 1,
  height: 1,
  columns: 1,
  rows: 1,
  ledSize: 1,
  layout: 'dual',
  halfAngle: 30,
  power: { red: 1, nearInfrared: 0 },
  together: 1,
  spread: 0,
  seed: 1,
};

describe('order of a beam', () => {
  // Arithmetic repeated apart from this code.
  it.each([
    [60, 1],
    [45, 2],
    [30, 4.818842],
    [15, 19.993727],
  ])('half angle %d degrees', (half, exponent) => {
    expect(lambertianExponent(half)).toBeCloseTo(exponent, 5);
  });
});

describe('irradiance', () => {
  const exponent = lambertianExponent(30);
  const at = (x: number) => channelIrradiance(placeLeds(ONE), exponent, { x, y: 0, distance: 15.24 }).red;

  it('of 1 W with a half angle of 30 degrees, on the axis and 5 cm beside it (computed apart)', () => {
    expect(at(0)).toBeCloseTo(3.987372, 5);
    expect(at(5)).toBeCloseTo(2.673715, 5);
  });

  it('summed over a wide plane gives back the power', () => {
    const step = 0.5;
    let watts = 0;
    for (let x = -100 + step / 2; x < 100; x += step) {
      for (let y = -100 + step / 2; y < 100; y += step) {
        watts += (channelIrradiance(placeLeds(ONE), exponent, { x, y, distance: 10 }).red * step ** 2) / 1000;
      }
    }
    // Beyond ten times the distance lies (1/sqrt(101))^(m+1), about 1e-6 of it.
    expect(watts).toBeCloseTo(1, 4);
  });

  it('of a Lambertian field in its own plane at a distance of its side is the view factor of two squares', () => {
    // Two equal, parallel, directly opposed squares at a distance of their side: closed form from memory, computed apart.
    const field: LightSource = {
      ...ONE,
      width: 20,
      height: 20,
      columns: 60,
      rows: 60,
      ledSize: 20 / 60,
      halfAngle: 60,
    };
    expect(truthOf(field, 20).capture).toBeCloseTo(0.1998, 3);
  });
});

describe('LEDs', () => {
  const field: LightSource = {
    ...ONE,
    width: 20,
    height: 30,
    columns: 6,
    rows: 10,
    layout: 'alternate',
    power: { red: 21, nearInfrared: 19 },
    spread: 0.05,
    hotMiddle: 0.5,
  };

  it('share the power of their channel out and lie with their outer edges on the field', () => {
    const leds = placeLeds(field);
    expect(leds).toHaveLength(60);
    expect(leds.reduce((sum, led) => sum + led.power.red, 0)).toBeCloseTo(21, 9);
    expect(leds.reduce((sum, led) => sum + led.power.nearInfrared, 0)).toBeCloseTo(19, 9);
    expect(Math.max(...leds.map((led) => led.x))).toBeCloseTo(9.5, 9);
    expect(Math.min(...leds.map((led) => led.y))).toBeCloseTo(-14.5, 9);
    expect(leds.filter((led) => led.power.red > 0 && led.power.nearInfrared > 0)).toEqual([]);
  });

  it('are the same for the same seed and others for another', () => {
    expect(placeLeds(field)).toEqual(placeLeds(field));
    expect(placeLeds({ ...field, seed: 2 })).not.toEqual(placeLeds(field));
  });
});
