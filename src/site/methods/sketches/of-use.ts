/** Sketches of what a panel costs and draws. Numbers are those of the worked examples. */
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { MILLI } from '../../../measure/unit-factors.ts';
import { box, dot, line, measure, path, round, type Sketch, scale, text } from './sketch.ts';

const [FIRST, CODE, READ] = ['2025-10-02', '2026-01-12', '2026-04-13'];
const daysTo = (day: string) => differenceInCalendarDays(day, FIRST);
const dayX = scale(0, daysTo(READ), 30, 300);
const priceY = scale(400, 460, 118, 22);
const [LIST, PAID] = [449, 416];

export const priceSteps: Sketch = {
  width: 340,
  height: 158,
  words:
    'The newest price that any buyer can pay counts, code and shipping included: €416 from 12 January 2026 on, whatever the list says. Older ones stay on record. After 90 days a price is flagged as old. Invented prices.',
  pieces: [
    line('soft', 30, 118, 316, 118),
    line('dash', dayX(daysTo(CODE)), priceY(LIST), 316, priceY(LIST)),
    path('accent', `M30 ${priceY(LIST)}H${dayX(daysTo(CODE))}V${priceY(PAID)}H${dayX(daysTo(READ))}`),
    dot('accent-fill', dayX(daysTo(CODE)), priceY(PAID), 5),
    text(30, priceY(LIST) - 9, '€449'),
    text(316, priceY(LIST) - 9, 'list price', 'end'),
    text(dayX(daysTo(CODE)) + 10, priceY(PAID) - 9, '€416, paid'),
    ...measure(dayX(daysTo(CODE)), 128, dayX(daysTo(READ)), 128),
    text((dayX(daysTo(CODE)) + dayX(daysTo(READ))) / 2, 150, `${daysTo(READ) - daysTo(CODE)} days: old`, 'middle'),
  ],
};

const DRAW = 118;
const TARIFF = 0.32;
const HOURS = MILLI / DRAW;
const hourX = scale(0, HOURS, 24, 264);

export const hour: Sketch = {
  width: 340,
  height: 148,
  words:
    'A panel that draws 118 W takes 8.5 hours for a kilowatt-hour. At a tariff of €0.32, that makes an hour of it €0.038. Numbers invented: the guide states its own tariff, with its day, and yours may differ.',
  pieces: [
    box('accent-fill', hourX(0), 46, hourX(1) - hourX(0), 54),
    box('ink', hourX(0), 46, hourX(HOURS) - hourX(0), 54),
    ...Array.from({ length: Math.floor(HOURS) }, (_, i) => line('soft', hourX(i + 1), 46, hourX(i + 1), 106)),
    ...measure(hourX(0), 34, hourX(HOURS), 34),
    text(hourX(HOURS / 2), 24, `1 kWh: €${TARIFF}`, 'middle'),
    ...measure(274, 46, 274, 100),
    text(282, 78, `${DRAW} W`),
    text(hourX(0), 124, `1 h: €${((DRAW / MILLI) * TARIFF).toFixed(3)}`),
    text(hourX(HOURS), 124, `${HOURS.toFixed(1)} h`, 'end'),
  ],
};

const DRAWS = [
  ['both', 118],
  ['red', 64],
  ['near-infrared', 60],
  ['standby', 1.2],
] as const;
const wattsX = scale(0, 118, 128, 276);

export const mainsDraw: Sketch = {
  width: 340,
  height: 166,
  words:
    'A meter between socket and panel reads what it draws: both channels, each alone, and in standby. The parts need not add up: 64 W and 60 W are more than 118 W, since fans and control are in each. Numbers invented.',
  pieces: [
    box('ink', 20, 12, 26, 34),
    dot('ink', 33, 24, 3),
    dot('ink', 33, 34, 3),
    line('ink', 46, 29, 120, 29),
    box('ink', 120, 12, 76, 34),
    text(158, 34, 'meter', 'middle'),
    line('ink', 196, 29, 268, 29),
    box('ink', 268, 8, 10, 42),
    ...[17, 29, 41].map((y) => dot('accent-fill', 282, y, 3)),
    ...DRAWS.flatMap(([name, watts], i) => [
      text(120, 80 + 26 * i, name, 'end'),
      box('accent-fill', 128, 69 + 26 * i, wattsX(watts) - 128, 13),
      text(wattsX(watts) + 8, 80 + 26 * i, `${watts} W`),
    ]),
  ],
};

/** What becomes of the draw: light along the top, the rest led off. Widths are to scale. */
function flow(draw: number, light: number, labels: readonly [string, string], rest: readonly [string, string]) {
  const foot = round(16 + (96 * light) / draw);
  const edge = `C168 ${foot} 190 ${Math.max(90, foot + 20)} 190 150`;
  return [
    path('light', `M20 16H188V${foot}H120${edge}H128C128 126 122 112 104 112H20Z`),
    box('accent-fill', 20, 16, 176, round(foot - 16)),
    path('ink', `M20 112H104C122 112 128 126 128 150M120 ${foot}${edge}`),
    text(32, round((foot + 112) / 2) + 5, `${draw} W`),
    text(206, 30, labels[0]),
    text(206, 49, labels[1]),
    text(202, 108, rest[0]),
    text(202, 127, rest[1]),
  ];
}

export const efficiencyFlow: Sketch = {
  width: 340,
  height: 156,
  words:
    'Of 118 W from the socket 41.6 W pass the frame as light: 35 %. The rest is heat, in drivers, fans and LEDs, or light past the frame, which counts as lost here. Widths are to scale; numbers invented.',
  pieces: flow(118, 41.6, ['41.6 W of light', 'in the frame: 35 %'], ['heat, and light', 'past the frame']),
};

export const emittedFlow: Sketch = {
  width: 340,
  height: 156,
  words:
    'Of 160 W from the socket 76.1 W leave the LEDs as light, wherever it goes: 48 %. The rest is heat, in drivers, fans and LEDs. How much light leaves is told by a model of the panel. Widths are to scale; numbers invented.',
  pieces: flow(160, 76.1, ['76.1 W of light,', 'all of it: 48 %'], ['heat', '']).filter((it) => it.pieces[0] !== ''),
};

/** A price as a length, cut into as many parts as it buys watts; one is filled. */
function cut(y: number, price: number, watts: number, of: string) {
  const at = scale(0, watts, 20, 316);
  const cuts = Array.from({ length: Math.floor(watts) }, (_, i) => `M${at(i + 1)} ${y}v30`).join('');
  return [
    path('soft', cuts),
    box('accent-fill', 20, y, round(at(1) - 20), 30),
    box('ink', 20, y, 296, 30),
    text(20, y + 49, `1 W: €${(price / watts).toFixed(2)}`),
    text(316, y + 49, `${watts.toFixed(1)} W ${of}`, 'end'),
  ];
}

export const wattOfLight: Sketch = {
  width: 340,
  height: 106,
  words:
    'The price, cut into as many parts as watts of light pass the frame: €416 over 41.6 W is €10.00 a watt. It’s what one watt of light in front of the panel costs to buy, not to run. Numbers invented.',
  pieces: [...measure(20, 32, 316, 32), text(168, 22, '€416', 'middle'), ...cut(44, 416, 41.6, 'in the frame')],
};

export const emittedWatt: Sketch = {
  width: 340,
  height: 172,
  words:
    'One price, cut twice: by the 40.0 W that pass the frame, and by the 76.1 W that leave the LEDs in all. By all the light a watt costs €6.31, not €12.00: which way it goes no longer matters. All the light is modelled. Numbers invented.',
  pieces: [
    ...measure(20, 28, 316, 28),
    text(168, 18, '€480', 'middle'),
    ...cut(38, 480, 40, 'in the frame'),
    ...cut(112, 480, 76.1, 'in all'),
  ],
};
