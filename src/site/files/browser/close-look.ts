/** The window in which a plot is looked at closely: drawing, reading, buttons and keys. */
import { html } from '../../shared/browser/dom.ts';
import { whenColoursChange } from '../../shared/browser/page-colours.ts';
import { readJson } from '../../shared/browser/read-json.ts';
import { CloseChart } from './close-chart.ts';
import { CLOSE_FORMAT, type ClosePlot, nearestIndex, reachOf, readOut } from './close-plot.ts';
import { listen } from './gestures.ts';
import { ViewWindow } from './view-window.ts';

/** A press of a key or button goes so many times closer, and so far to a side. */
const STEP = 1.5;
const ASIDE = 0.25;
/** A press of an arrow key reads on by this share of what is in view, or by one reading. */
const READ_ON = 0.01;

/**
 * Opens a plot.
 *
 * @throws where its data can't be read
 */
export async function lookCloser(address: string): Promise<void> {
  const plot = await readJson<ClosePlot>(address, 'the readings', CLOSE_FORMAT);
  new CloseLook(plot).open();
}

class CloseLook {
  readonly #plot: ClosePlot;
  readonly #places: readonly number[];
  readonly #dialog: HTMLDialogElement;
  readonly #slider: HTMLElement;
  readonly #canvas = html('canvas', { 'aria-hidden': 'true' });
  readonly #said = html('p', { class: 'read-out' });
  readonly #gone = new AbortController();
  #chart: CloseChart | undefined;

  constructor(plot: ClosePlot) {
    this.#plot = plot;
    this.#places = plot.curves[0]?.x ?? [];
    const [from, to] = reachOf(plot);
    this.#slider = html(
      'div',
      {
        class: 'drawing',
        role: 'slider',
        tabindex: 0,
        'aria-label': `${plot.x.name}, ${plot.x.unit}`,
        'aria-valuemin': from,
        'aria-valuemax': to,
        'aria-describedby': 'close-keys',
      },
      this.#canvas,
    );
    const fit = html('button', { type: 'button', 'aria-pressed': 'false' }, 'Fit the height');
    fit.addEventListener('click', () => {
      const isFitted = fit.getAttribute('aria-pressed') !== 'true';
      fit.setAttribute('aria-pressed', String(isFitted));
      this.#change((chart) => {
        chart.isFitted = isFitted;
      });
    });
    const close = html('button', { type: 'button', class: 'shut' }, 'Close');
    close.addEventListener('click', () => this.#dialog.close());
    this.#dialog = html(
      'dialog',
      { class: 'close-look', 'aria-labelledby': 'close-title' },
      html('div', { class: 'top' }, html('h2', { id: 'close-title' }, plot.title), close),
      this.#said,
      this.#slider,
      html(
        'div',
        { class: 'keys', role: 'group', 'aria-label': 'What is in view' },
        this.#button('Closer', () => this.#zoom(STEP)),
        this.#button('Wider', () => this.#zoom(1 / STEP)),
        this.#button('←', () => this.#change(({ view }) => view.move(-ASIDE)), 'To the left'),
        this.#button('→', () => this.#change(({ view }) => view.move(ASIDE)), 'To the right'),
        this.#button('All', () => this.#change(({ view }) => view.reset())),
        fit,
      ),
      html(
        'p',
        { id: 'close-keys', class: 'small soft' },
        `${plot.note ? `${plot.note} ` : ''}Wheel or two fingers: closer; drag: aside. Keys on the drawing: arrows read on, with Shift they move it; + and − closer and wider; 0 all.`,
      ),
    );
    this.#slider.addEventListener('keydown', (event) => this.#onKey(event));
    this.#dialog.addEventListener('close', () => this.#end());
  }

  open(): void {
    document.body.append(this.#dialog);
    this.#dialog.showModal();
    const { x, view } = this.#plot;
    const part = new ViewWindow(reachOf(this.#plot), this.#places.length, {
      ...(view && { first: view }),
      isLogarithmic: x.isLogarithmic ?? false,
    });
    const chart = new CloseChart(this.#canvas, this.#plot, part);
    this.#chart = chart;
    // The highest place is what most come for.
    this.#read(this.#highest());
    listen(this.#slider, {
      zoom: (times, at) => this.#change(({ view }) => view.zoom(times, chart.valueAt(at))),
      drag: (by) => this.#change(({ view }) => view.move(-by / chart.width)),
      point: (at) => this.#read(nearestIndex(this.#places, chart.valueAt(at))),
      canDrag: () => !chart.view.isWhole,
    });
    whenColoursChange(() => chart.recolour(), this.#gone.signal);
    this.#slider.focus();
  }

  #end(): void {
    this.#gone.abort();
    this.#chart?.destroy();
    this.#dialog.remove();
  }

  #button(text: string, act: () => void, label?: string): HTMLElement {
    const button = html('button', { type: 'button', 'aria-label': label }, text);
    button.addEventListener('click', act);
    return button;
  }

  #change(how: (chart: CloseChart) => void): void {
    const chart = this.#chart;
    if (!chart) return;
    how(chart);
    chart.update();
  }

  /** About the place that is read, where it is in view; else about the middle. */
  #zoom(times: number): void {
    this.#change(({ view, read }) => {
      const at = this.#places[read] ?? view.from;
      view.zoom(times, at >= view.from && at <= view.to ? at : (view.from + view.to) / 2);
    });
  }

  #read(index: number): void {
    const chart = this.#chart;
    if (!chart) return;
    chart.read = Math.min(this.#places.length - 1, Math.max(0, index));
    const text = readOut(this.#plot, chart.read);
    this.#said.textContent = text;
    this.#slider.setAttribute('aria-valuenow', String(this.#places[chart.read] ?? 0));
    this.#slider.setAttribute('aria-valuetext', text);
    chart.update();
  }

  /** Reads at another reading, and brings it into view. */
  #readOn(index: number): void {
    const place = this.#places[Math.min(this.#places.length - 1, Math.max(0, index))];
    if (place !== undefined) this.#chart?.view.show(place);
    this.#read(index);
  }

  /** Within what is in view at first. */
  #highest(): number {
    const { curves, view } = this.#plot;
    const [first] = curves;
    const values = first?.high ?? first?.y ?? [];
    const [from, to] = view ?? reachOf(this.#plot);
    return this.#places.reduce(
      (best, at, i) => (at >= from && at <= to && (values[i] as number) > (values[best] ?? -Infinity) ? i : best),
      nearestIndex(this.#places, from),
    );
  }

  #onKey(event: KeyboardEvent): void {
    const chart = this.#chart;
    if (!chart || event.ctrlKey || event.metaKey || event.altKey) return;
    const { view, read } = chart;
    const inView = nearestIndex(this.#places, view.to) - nearestIndex(this.#places, view.from);
    const on = Math.max(1, Math.round(READ_ON * inView));
    const aside = (share: number) => this.#change(({ view }) => view.move(share));
    const acts: Readonly<Record<string, () => void>> = {
      ArrowRight: () => (event.shiftKey ? aside(ASIDE) : this.#readOn(read + on)),
      ArrowLeft: () => (event.shiftKey ? aside(-ASIDE) : this.#readOn(read - on)),
      ArrowUp: () => this.#readOn(read + on),
      ArrowDown: () => this.#readOn(read - on),
      PageUp: () => this.#readOn(read + 10 * on),
      PageDown: () => this.#readOn(read - 10 * on),
      Home: () => this.#readOn(nearestIndex(this.#places, view.from)),
      End: () => this.#readOn(nearestIndex(this.#places, view.to)),
      '+': () => this.#zoom(STEP),
      '=': () => this.#zoom(STEP),
      '-': () => this.#zoom(1 / STEP),
      '−': () => this.#zoom(1 / STEP),
      '0': () => this.#change(({ view }) => view.reset()),
    };
    const act = acts[event.key];
    if (!act) return;
    event.preventDefault();
    act();
  }
}
