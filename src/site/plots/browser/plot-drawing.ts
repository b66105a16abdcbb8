/** One plot on a canvas, with a link over each point, so that points can be reached by the keyboard. */
import {
  Chart,
  type ChartConfiguration,
  LinearScale,
  LineElement,
  type Plugin,
  PointElement,
  ScatterController,
  Tooltip,
} from 'chart.js';

Chart.register(ScatterController, PointElement, LineElement, LinearScale, Tooltip);

interface Point {
  x: number;
  y: number;
  low: number | undefined;
  high: number | undefined;
  isOn: boolean;
  name: string;
  address: string;
  words: string;
}

const numberOf = (text: string | undefined) => (text === undefined ? undefined : Number(text));

/** Reads the points from the table of a section. */
function pointsOf(section: HTMLElement): Point[] {
  return [...section.querySelectorAll<HTMLTableRowElement>('tbody tr')].map((row) => {
    const link = row.querySelector('a');
    const cells = [...row.cells].map((it) => it.textContent?.trim() ?? '');
    const numbers = [...row.querySelectorAll('.n')].map((it) => ownText(it));
    const doubt = row.querySelector('.dagger') ? '; in doubt' : '';
    return {
      x: Number(row.dataset.x),
      y: Number(row.dataset.y),
      low: numberOf(row.dataset.low),
      high: numberOf(row.dataset.high),
      isOn: row.dataset.on !== undefined,
      name: cells[0] ?? '',
      address: link?.getAttribute('href') ?? '',
      words: `${cells[0]}, ${cells[1]}: ${numbers.join(', ')}${doubt}`,
    };
  });
}

/** What a cell says itself, without its marks. */
function ownText(cell: Element): string {
  const texts = [...cell.childNodes].filter((it) => !(it instanceof Element && it.matches('.dagger')));
  return texts
    .map((it) => it.textContent ?? '')
    .join('')
    .trim();
}

/** Colours of the page, light or dark as it is. */
function colours() {
  const style = getComputedStyle(document.documentElement);
  const of = (name: string) => {
    const probe = document.createElement('span');
    probe.style.color = `var(${name})`;
    document.body.append(probe);
    const colour = getComputedStyle(probe).color;
    probe.remove();
    return colour;
  };
  return { ink: of('--ink'), soft: of('--soft'), rule: of('--rule'), accent: of('--accent'), font: style.fontFamily };
}

/** Upright lines for the 95 % intervals, and the frontier's line under the points. */
function drawnBehind(points: readonly Point[], hasFrontier: boolean, colour: () => ReturnType<typeof colours>): Plugin {
  return {
    id: 'intervals',
    beforeDatasetsDraw({ ctx, scales: { x, y } }) {
      if (!x || !y) return;
      ctx.save();
      ctx.strokeStyle = colour().accent;
      ctx.lineWidth = 1.5;
      ctx.beginPath();
      for (const it of points) {
        if (it.low === undefined || it.high === undefined) continue;
        ctx.moveTo(x.getPixelForValue(it.x), y.getPixelForValue(it.low));
        ctx.lineTo(x.getPixelForValue(it.x), y.getPixelForValue(it.high));
      }
      ctx.stroke();
      if (hasFrontier) {
        ctx.strokeStyle = colour().ink;
        ctx.setLineDash([6, 4]);
        ctx.beginPath();
        points
          .filter((it) => it.isOn)
          .forEach((it, i) => {
            ctx[i === 0 ? 'moveTo' : 'lineTo'](x.getPixelForValue(it.x), y.getPixelForValue(it.y));
          });
        ctx.stroke();
      }
      ctx.restore();
    },
  };
}

/** Draws the plot of a section above its table. */
export function drawPlot(section: HTMLElement): void {
  const place = section.querySelector<HTMLElement>('[data-chart]');
  if (!place || place.childElementCount > 0) return;
  const points = pointsOf(section);
  const names = section.dataset.names?.split('|');
  const canvas = document.createElement('canvas');
  canvas.setAttribute('role', 'img');
  canvas.setAttribute(
    'aria-label',
    `${section.dataset.y} against ${section.dataset.x}; the table below holds the numbers`,
  );
  const links = document.createElement('div');
  links.className = 'points';
  place.append(canvas, links);
  place.hidden = false;

  const colour = colours;
  const now = colour();
  const axis = (text: string) => ({
    title: { display: true, text, color: now.ink },
    ticks: { color: now.ink },
    grid: { color: now.rule },
    border: { color: now.soft },
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
          pointBackgroundColor: now.accent,
          pointBorderColor: now.ink,
        },
      ],
    },
    options: {
      animation: false,
      maintainAspectRatio: false,
      scales: {
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
      drawnBehind(points, section.dataset.frontier !== undefined, colour),
      { id: 'links', afterRender: (chart) => placeLinks(chart as Chart<'scatter'>, links, points) },
    ],
  };
  const chart = new Chart(canvas, configuration);
  matchMedia('(prefers-color-scheme: dark)').addEventListener(
    'change',
    () => {
      chart.destroy();
      place.replaceChildren();
      drawPlot(section);
    },
    { once: true },
  );
}

/** Puts a link over each point; they are made once and moved when the plot changes its size. */
function placeLinks(chart: Chart<'scatter'>, links: HTMLElement, points: readonly Point[]): void {
  if (links.childElementCount === 0) {
    links.append(
      ...points.map((it, i) => {
        const link = document.createElement('a');
        link.href = it.address;
        link.setAttribute('aria-label', it.words);
        link.addEventListener('focus', () => showTip(chart, i));
        link.addEventListener('mouseenter', () => showTip(chart, i));
        link.addEventListener('blur', () => showTip(chart, undefined));
        link.addEventListener('mouseleave', () => showTip(chart, undefined));
        return link;
      }),
    );
  }
  const marks = chart.getDatasetMeta(0).data;
  [...links.children].forEach((link, i) => {
    const mark = marks[i];
    if (!mark || !(link instanceof HTMLElement)) return;
    link.style.left = `${mark.x}px`;
    link.style.top = `${mark.y}px`;
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
