import type { CorrectedFigure } from '../../../ledger/corrections.ts';
import type { Ledger, PanelEntry } from '../../../ledger/ledger.ts';
import type { Loaded } from '../../../ledger/load-ledger.ts';
import { type FigureOrGap, isFigure } from '../../../measure/figure.ts';
import { metricById } from '../../../measure/metrics.ts';
import { showText } from '../../../words/figure-text.ts';
import { showDate } from '../../../words/format.ts';
import { nameOf } from '../../../words/names.ts';
import { type Warning, warningAt } from '../warning.ts';

/** A figure may lie this far from what its correction says, as a share of itself: entries are written to five digits. Our own choice. */
const AGREES_WITHIN = 0.001;

/**
 * Figures that are not what their newest correction says: readers would be told of a figure that stands nowhere. Figures in
 * money move with every price, and are left alone.
 */
export function correctionsStand({ content, ledger }: Loaded): Warning[] {
  const source = content.corrections?.source;
  const { corrections = [] } = content.corrections?.data ?? {};
  if (!source) return [];
  const seen = new Set<string>();
  return ledger.corrections.flatMap((entry) => {
    const panel = entry.panel === undefined ? undefined : ledger.panels.get(entry.panel);
    const index = corrections.findIndex(
      (it) =>
        it.date === entry.date &&
        it.panel === entry.panel &&
        it.session === entry.session &&
        it.metric === entry.figures[0]?.metric,
    );
    return entry.figures.flatMap((figure, i): Warning[] => {
      const isNewest = !seen.has(figure.id);
      seen.add(figure.id);
      if (!isNewest || !panel || isMoney(figure)) return [];
      const now = figureNow(panel, figure, entry.session);
      if (stands(figure, now)) return [];
      return [
        warningAt(source, ['corrections', index, ...(i === 0 ? [] : ['alsoMoved', i - 1]), 'to'], {
          severity: 'doubt',
          check: 'correction-stands',
          text: `By the correction of ${showDate(entry.date)} the ${nameOf(figure.metric)} of the ${panel.name} is ${told(figure)}, and it is ${showText(now, currencyOf(ledger))}.`,
          hint: 'if it was corrected again, add an entry (npm run ledger -- correct); otherwise mend this one',
          figures: [figure.metric],
        }),
      ];
    });
  });
}

const isMoney = ({ metric }: CorrectedFigure) => metricById(metric).unit.startsWith('currency');

const currencyOf = ({ guide }: Ledger) => guide.currency;

function figureNow(
  { figures, sessions }: PanelEntry,
  { metric }: CorrectedFigure,
  day?: string,
): FigureOrGap | undefined {
  return day === undefined ? figures.get(metric) : sessions.find((it) => it.date === day)?.figures.get(metric);
}

function stands({ to }: CorrectedFigure, now: FigureOrGap | undefined): boolean {
  if (to === null || typeof to === 'string') return !isFigure(now);
  return isFigure(now) && Math.abs(now.value - to.value) <= AGREES_WITHIN * Math.abs(now.value);
}

const told = ({ to }: CorrectedFigure) => (to === null || typeof to === 'string' ? 'none' : String(to.value));
