/** Sketches of what a panel costs and draws. Numbers are those of the worked examples. */
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { MILLI } from '../../../measure/unit-factors.ts';
import { box, dot, line, measure, path, type Sketch, scale, text } from './sketch.ts';

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

const POWER = 41.6;
const flowY = scale(0, DRAW, 16, 112);

export const efficiencyFlow: Sketch = {
  width: 340,
  height: 156,
  words:
    'Of 118 W from the socket 41.6 W pass the frame as light: 35 %. The rest is heat, in drivers, fans and LEDs, or light past the frame, which counts as lost here. Widths are to scale; numbers invented.',
  pieces: [
    path(
      'light',
      `M20 16H188V${flowY(POWER)}H120C168 ${flowY(POWER)} 190 90 190 150H${190 - 62}C128 126 122 112 104 112H20Z`,
    ),
    box('accent-fill', 20, 16, 176, flowY(POWER) - 16),
    path('ink', `M20 112H104C122 112 128 126 128 150M190 150C190 90 168 ${flowY(POWER)} 120 ${flowY(POWER)}`),
    text(32, 84, `${DRAW} W`),
    text(206, 30, `${POWER} W of light`),
    text(206, 49, `in the frame: ${Math.round((100 * POWER) / DRAW)} %`),
    text(202, 108, 'heat, and light'),
    text(202, 127, 'past the frame'),
  ],
};
