/** One plot on a canvas, with a button over each point, so that points can be reached and picked by the keyboard. */
import {
  Chart,
  type ChartConfiguration,
  LinearScale,
  LineElement,
  LogarithmicScale,
  type Plugin,
  PointElement,
  ScatterController,
  Tooltip,
} from 'chart.js';
import { type PageColours, pageColours } from '../../shared/browser/page-colours.ts';
import { placeNames } from './plot-names.ts';
import { goBetween } from './point-keys.ts';
import { isRound, roundEnds } from './round-ends.ts';
import { slugOf } from './row-data.ts';

Chart.register(ScatterController, PointElement, LineElement, LinearScale, LogarithmicScale, Tooltip);

interface Point {
  slug: string;
  x: number;
  y: number;
  low: number | undefined;
  high: number | undefined;
  isOn: boolean;
  name: string;
  /** The model, which stands beside the point. */
  short: string;
  words: string;
}

/** What happens when a point is picked, or no longer. */
export type Pick = (slug: string, name: string) => void;

const numberOf = (text: string | undefined) => (text === undefined ? undefined : Number(text));

/** Reads the points from the table of a section, without the rows that filters hide. */
function pointsOf(section: HTMLElement): Point[] {
  return [...section.querySelectorAll<HTMLTableRowElement>('tbody tr:not([hidden])')].map(({ dataset, cells }) => {
    const [name = '', group] = [...cells].map((it) => it.textContent.trim());
    return {
      slug: slugOf(dataset.f ?? ''),
      x: Number(dataset.x),
      y: Number(dataset.y),
      low: numberOf(dataset.low),
      high: numberOf(dataset.high),
      isOn: dataset.on !== undefined,
      name,
      short: dataset.short ?? name,
      words: `${name}, ${group || 'size not known'}: ${dataset.words}`,
    };
  });
}

/** The frontier's line under the points, and over them upright lines for the 95 % intervals, the shortest of which are no longer than a point. */
function drawnLines(points: readonly Point[], hasFrontier: boolean, colour: () => PageColours): Plugin {
  return {
    id: 'lines',
    beforeDatasetsDraw({ ctx, scales: { x, y } }) {
      if (!x || !y || !hasFrontier) return;
      ctx.save();
      ctx.lineWidth = 1.5;
      ctx.strokeStyle = colour().ink;
      ctx.setLineDash([6, 4]);
      ctx.beginPath();
      const places = points
        .filter((it) => it.isOn)
        .map((it) => ({ x: x.getPixelForValue(it.x), y: y.getPixelForValue(it.y) }));
      // A step: between two panels no money buys more than the weaker one's light.
      places.forEach((it, i) => {
        ctx[i === 0 ? 'moveTo' : 'lineTo'](it.x, (places[i - 1] ?? it).y);
        ctx.lineTo(it.x, it.y);
      });
      ctx.stroke();
      ctx.restore();
    },
    afterDatasetsDraw({ ctx, scales: { x, y } }) {
      if (!x || !y) return;
      ctx.save();
      ctx.strokeStyle = colour().accent;
      ctx.lineWidth = 2;
      ctx.beginPath();
      for (const it of points) {
        if (it.low === undefined || it.high === undefined) continue;
        ctx.moveTo(x.getPixelForValue(it.x), y.getPixelForValue(it.low));
        ctx.lineTo(x.getPixelForValue(it.x), y.getPixelForValue(it.high));
      }
      ctx.stroke();
      ctx.restore();
    },
  };
}

/** Names of points that have a free place beside them. */
function namesBeside(points: readonly Point[], colour: () => PageColours): Plugin {
  return {
    id: 'names',
    afterDatasetsDraw({ ctx, chartArea, scales: { x, y } }) {
      if (!x || !y) return;
      const now = colour();
      ctx.save();
      ctx.font = `13px ${now.font}`;
      ctx.fillStyle = now.ink;
      ctx.strokeStyle = now.paper;
      ctx.lineWidth = 4;
      ctx.lineJoin = 'round';
      ctx.textBaseline = 'middle';
      const named = points.map((it) => ({
        x: x.getPixelForValue(it.x),
        y: y.getPixelForValue(it.y),
        width: ctx.measureText(it.short).width,
      }));
      placeNames(named, chartArea).forEach((place, i) => {
        if (!place) return;
        // Paper behind the letters, where a line would run through them.
        ctx.strokeText(points[i]?.short ?? '', place.x, place.y);
        ctx.fillText(points[i]?.short ?? '', place.x, place.y);
      });
      ctx.restore();
    },
  };
}

/** From a finger to the point that it means, px. */
const REACH = 22;

/** Draws the plot of a section above its table. */
export function drawPlot(section: HTMLElement, pick: Pick): void {
  const place = section.querySelector<HTMLElement>('[data-chart]');
  if (!place || place.childElementCount > 0) return;
  const points = pointsOf(section);
  if (points.length === 0) {
    place.textContent = 'The filters leave no panel here.';
    return;
  }
  const names = section.dataset.names?.split('|');
  const canvas = document.createElement('canvas');
  canvas.setAttribute('role', 'img');
  canvas.setAttribute(
    'aria-label',
    `${section.dataset.y} against ${section.dataset.x}; the table below holds the numbers`,
  );
  const buttons = document.createElement('div');
  buttons.className = 'points';
  buttons.setAttribute('role', 'toolbar');
  buttons.setAttribute('aria-label', 'Points: arrow keys go from one to the next, Enter picks one to compare');
  buttons.addEventListener('keydown', goBetween);
  place.append(canvas, buttons);

  const colour = pageColours;
  const now = colour();
  Chart.defaults.font.family = now.font;
  Chart.defaults.font.size = 13;
  const axis = (text: string) => ({
    title: { display: true, text, color: now.ink },
    ticks: { color: now.ink },
    grid: { color: now.rule },
    border: { color: now.soft },
  });
  const hasFrontier = section.dataset.frontier !== undefined;
  /** Of equal ratios from one round number to another, as in the guide's picture: small panels would be one heap. */
  const ratios = (text: string, values: readonly number[]) => ({
    ...axis(text),
    type: 'logarithmic' as const,
    ...roundEnds(values),
    ticks: { color: now.ink, callback: (value: number | string) => Number(value).toLocaleString('en-GB') },
    afterBuildTicks: (scale: { ticks: Array<{ value: number }> }) => {
      scale.ticks = scale.ticks.filter((it) => isRound(it.value));
    },
  });
  const configuration: ChartConfiguration<'scatter'> = {
    type: 'scatter',
    data: {
      datasets: [
        {
          data: points.map(({ x, y }) => ({ x, y })),
          // Form tells the frontier's panels, not colour alone.
          pointStyle: points.map((it) => (it.isOn ? 'rectRot' : 'circle')),
          pointRadius: points.map((it) => (it.isOn ? 7 : 5)),
          pointBackgroundColor: now.paper,
          pointBorderColor: now.ink,
        },
      ],
    },
    options: {
      animation: false,
      // Points may lie on one another: a finger picks the nearest, whichever button is on top.
      onClick: (event, _, { canvas: drawn }) => {
        const [nearest] = event.native
          ? chart.getElementsAtEventForMode(event.native, 'nearest', { intersect: false }, false)
          : [];
        const [x, y] = [event.x ?? 0, event.y ?? 0];
        if (!nearest || Math.hypot(nearest.element.x - x, nearest.element.y - y) > REACH) return;
        drawn.parentElement?.querySelectorAll<HTMLElement>('[data-point]')[nearest.index]?.click();
      },
      maintainAspectRatio: false,
      scales: hasFrontier
        ? {
            x: ratios(
              section.dataset.x ?? '',
              points.map((it) => it.x),
            ),
            y: ratios(
              section.dataset.y ?? '',
              points.flatMap((it) => [it.low ?? it.y, it.high ?? it.y]),
            ),
          }
        : {
            x: {
              ...axis(section.dataset.x ?? ''),
              type: 'linear',
              beginAtZero: true,
              ...(names && { min: -0.5, max: names.length - 0.5 }),
              ...(names && {
                ticks: { color: now.ink, stepSize: 1, callback: (value) => names[Number(value)] ?? '' },
                afterBuildTicks: (scale) => {
                  scale.ticks = names.map((_, value) => ({ value }));
                },
              }),
            },
            y: {
              ...axis(section.dataset.y ?? ''),
              beginAtZero: true,
              suggestedMax: Math.max(...points.map((it) => it.high ?? it.y)),
            },
          },
      plugins: { tooltip: { callbacks: { label: ({ dataIndex }) => points[dataIndex]?.words ?? '' } } },
    },
    plugins: [
      drawnLines(points, hasFrontier, colour),
      namesBeside(points, colour),
      { id: 'buttons', afterRender: (chart) => placeButtons(chart as Chart<'scatter'>, buttons, points, pick) },
    ],
  };
  const chart = new Chart(canvas, configuration);
  matchMedia('(prefers-color-scheme: dark)').addEventListener(
    'change',
    () => {
      chart.destroy();
      const pressed = new Set(
        [...buttons.querySelectorAll<HTMLElement>('[aria-pressed=true]')].map((it) => it.dataset.point),
      );
      place.replaceChildren();
      drawPlot(section, pick);
      for (const it of place.querySelectorAll<HTMLElement>('[data-point]')) {
        if (pressed.has(it.dataset.point)) it.setAttribute('aria-pressed', 'true');
      }
    },
    { once: true },
  );
}

/** Puts a button over each point; they are made once and moved when the plot changes its size. */
function placeButtons(chart: Chart<'scatter'>, buttons: HTMLElement, points: readonly Point[], pick: Pick): void {
  if (buttons.childElementCount === 0) {
    buttons.append(
      ...points.map((it, i) => {
        const button = document.createElement('button');
        button.type = 'button';
        button.tabIndex = i === 0 ? 0 : -1;
        button.dataset.point = it.slug;
        button.setAttribute('aria-pressed', 'false');
        button.setAttribute('aria-label', it.words);
        button.addEventListener('click', () => pick(it.slug, it.name));
        button.addEventListener('focus', () => showTip(chart, i));
        button.addEventListener('mouseenter', () => showTip(chart, i));
        button.addEventListener('blur', () => showTip(chart, undefined));
        button.addEventListener('mouseleave', () => showTip(chart, undefined));
        return button;
      }),
    );
  }
  const marks = chart.getDatasetMeta(0).data;
  [...buttons.children].forEach((button, i) => {
    const mark = marks[i];
    if (!mark || !(button instanceof HTMLElement)) return;
    button.style.left = `${mark.x}px`;
    button.style.top = `${mark.y}px`;
  });
}

function showTip(chart: Chart<'scatter'>, index: number | undefined): void {
  // A plot that is being drawn anew has let go of its canvas already.
  if (!chart.ctx) return;
  const element = index === undefined ? undefined : chart.getDatasetMeta(0).data[index];
  chart.tooltip?.setActiveElements(
    element && index !== undefined ? [{ datasetIndex: 0, index }] : [],
    element ? { x: element.x, y: element.y } : { x: 0, y: 0 },
  );
  chart.update('none');
}
