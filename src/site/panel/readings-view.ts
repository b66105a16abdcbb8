import type { PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { type Flag, isFigure } from '../../measure/figure.ts';
import { isInDoubt } from '../../measure/handed-on.ts';
import { type MetricId, metricsOnPanelPage } from '../../measure/metrics.ts';
import { MODES_COMBINED_FIRST } from '../../measure/modes.ts';
import { showText } from '../../words/figure-text.ts';
import { type Dagger, markOf } from '../../words/flags.ts';
import { showDate } from '../../words/format.ts';
import { carriedLines } from '../shared/carried-lines.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';

/** The figures of a panel, in the groups and tables that its page has. */
export interface ReadingsView {
  light: { heads: string[]; rows: Array<{ name: string; method: string; cells: ShownFigure[] }> };
  spread: ShownFigure[];
  times: ShownFigure[];
  surroundings: Array<{
    name: string;
    method: string;
    distance: string;
    on: ShownFigure;
    off: ShownFigure;
    /** With the panel on; for the fields whose reference level depends on it. */
    frequency?: ShownFigure;
  }>;
  sessions: Array<{
    date: string;
    shownDate: string;
    conditions: string;
    /** What an earlier session did not read again, and from when it is; the head says it of the current one. */
    carried: string[];
    power: ShownFigure;
    mean: ShownFigure;
    change: string;
    /** It is a number; else the reason why there is none. */
    isChange: boolean;
    changeDagger?: Dagger;
    /** Where that doubt is told. */
    changeFlagsAt: string;
    /** Doubts of an earlier session; those of the newest stand at the top of the page. */
    doubts: readonly Flag[];
  }>;
}

/** Metrics that each mode has. */
type ModeMetric = 'peak-irradiance' | 'mains-draw' | 'efficiency' | 'flicker' | 'flicker-frequency';

/** The figures of a panel's current session, and the main ones of all. */
export function readingsView(panel: PanelEntry, currency: string): ReadingsView {
  const { current } = panel;
  const figure = (metric: MetricId) => shownFigure(panel, panel.figures.get(metric), metric, currency);
  const modeRow = (name: string, metric: ModeMetric) => ({
    name,
    method: figure(`${metric}-combined`).method,
    cells: MODES_COMBINED_FIRST.map((mode) => figure(`${metric}-${mode}`)),
  });
  return {
    light: {
      heads: ['Both channels', 'Red alone', 'Near-infrared alone'],
      rows: [
        modeRow('Peak irradiance', 'peak-irradiance'),
        modeRow('Mains draw', 'mains-draw'),
        modeRow('Efficiency', 'efficiency'),
        {
          name: 'Efficiency less standby',
          method: '/methods/efficiency/',
          cells: MODES_COMBINED_FIRST.map((mode) => figure(`efficiency-${mode}-net`)),
        },
        modeRow('Flicker', 'flicker'),
        modeRow('Flicker frequency', 'flicker-frequency'),
      ],
    },
    spread: metricsOnPanelPage('spread').map(figure),
    times: metricsOnPanelPage('times').map(figure),
    surroundings: (['magnetic', 'electric', 'radio', 'sound'] as const).map((kind) => {
      const metric = kind === 'sound' ? 'sound' : (`${kind}-field` as const);
      const on = figure(`${metric}-on`);
      return {
        name: on.name.replace(/, panel on$/, ''),
        method: on.method,
        distance:
          current?.used[kind]?.distance?.written ?? (current?.used[kind] ? 'distance not recorded' : 'not measured'),
        on,
        off: figure(`${metric}-off`),
        ...((kind === 'magnetic' || kind === 'electric') && { frequency: figure(`${kind}-field-frequency`) }),
      };
    }),
    sessions: panel.sessions.map((session, i) => ({
      date: session.date,
      shownDate: showDate(session.date),
      conditions: `${session.conditions.distance} cm, bench procedure version ${session.conditions.methodVersion}${session.readings.draft ? '; a draft, not published' : ''}`,
      carried: session === current ? [] : carriedLines(session.readings).map((it) => it.text),
      power: shownFigure(panel, session.figures.get('optical-power'), 'optical-power', currency, session),
      mean: shownFigure(panel, session.figures.get('mean-irradiance'), 'mean-irradiance', currency, session),
      change: showText(session.change, currency),
      isChange: isFigure(session.change),
      ...(markOf(session.change) && { changeDagger: markOf(session.change) }),
      changeFlagsAt: flagsAt(panel, isPowerInDoubt(session) ? session : panel.sessions[i + 1]),
      doubts: session === current ? [] : session.flags.filter((it) => it.severity !== 'note'),
    })),
  };
}

/** Where a page tells the doubts of a session. */
const flagsAt = ({ current }: PanelEntry, session: SessionEntry | undefined) =>
  session === undefined || session === current ? '#flags' : `#flags-${session.date}`;

function isPowerInDoubt({ figures }: SessionEntry): boolean {
  const power = figures.get('optical-power');
  return isFigure(power) && isInDoubt(power);
}
