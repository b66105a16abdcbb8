import type { Chart } from 'chart.js';
import type { PageColours } from '../../shared/browser/page-colours.ts';
import type { ClosePlot } from './close-plot.ts';

/** Height of a line of letters, and rows of them that the words of upright lines take turns in, so that none covers another. */
const LINE = 15;
const ROWS = 3;

/** Claims, moments and levels as broken lines with their words, tops of peaks, and the place that is read. */
export function drawMarks(chart: Chart<'line'>, plot: ClosePlot, read: number, colours: PageColours): void {
  const {
    ctx,
    chartArea: { left, right, top, bottom },
    scales: { x, y },
  } = chart;
  if (!x || !y) return;
  ctx.save();
  ctx.beginPath();
  ctx.rect(left, top, right - left, bottom - top);
  ctx.clip();
  ctx.font = `13px ${colours.font}`;
  ctx.textBaseline = 'middle';
  const write = (text: string, at: number, height: number) => {
    const width = ctx.measureText(text).width;
    const from = at + 5 + width > right ? at - 5 - width : at + 5;
    // Paper behind the letters, where a line would run through them.
    ctx.strokeStyle = colours.paper;
    ctx.lineWidth = 4;
    ctx.lineJoin = 'round';
    ctx.strokeText(text, Math.max(left + 2, from), height);
    ctx.fillStyle = colours.ink;
    ctx.fillText(text, Math.max(left + 2, from), height);
  };
  const line = (x1: number, y1: number, x2: number, y2: number, dash: number[]) => {
    ctx.strokeStyle = colours.ink;
    ctx.lineWidth = 1;
    ctx.setLineDash(dash);
    ctx.beginPath();
    ctx.moveTo(x1, y1);
    ctx.lineTo(x2, y2);
    ctx.stroke();
    ctx.setLineDash([]);
  };
  const isInView = (at: number) => at >= left - 1 && at <= right + 1;
  const uprights = (plot.uprights ?? []).map((it) => ({ at: x.getPixelForValue(it.at), text: it.text }));
  for (const { at } of uprights) line(at, top, at, bottom, [2, 3]);
  for (const it of plot.levels ?? []) {
    const height = y.getPixelForValue(it.at);
    line(left, height, right, height, [2, 3]);
    write(it.text, right, height - 10);
  }
  for (const [i, it] of uprights.filter(({ at }) => isInView(at)).entries()) {
    write(it.text, it.at, top + 10 + LINE * (i % ROWS));
  }
  const tops = (plot.tops ?? []).map((it) => ({
    at: x.getPixelForValue(it.x),
    height: y.getPixelForValue(it.y),
    text: it.text,
  }));
  let end = Number.NEGATIVE_INFINITY;
  for (const it of tops.filter(({ at }) => isInView(at))) {
    dot(ctx, it.at, it.height, 3.5, colours);
    // A name that would lie on the one before it is left to the page.
    if (it.at < end) continue;
    write(it.text, it.at, Math.max(top + LINE * ROWS + 10, it.height));
    end = it.at + ctx.measureText(it.text).width + 8;
  }
  const at = plot.curves[0]?.x[read];
  if (at !== undefined) {
    const place = x.getPixelForValue(at);
    line(place, top, place, bottom, []);
    dot(ctx, place, y.getPixelForValue(plot.curves[0]?.high?.[read] ?? plot.curves[0]?.y[read] ?? 0), 5, colours);
  }
  ctx.restore();
}

function dot(ctx: CanvasRenderingContext2D, x: number, y: number, radius: number, { ink, paper }: PageColours): void {
  ctx.beginPath();
  ctx.arc(x, y, radius, 0, 2 * Math.PI);
  ctx.fillStyle = paper;
  ctx.fill();
  ctx.strokeStyle = ink;
  ctx.lineWidth = 1.5;
  ctx.stroke();
}
