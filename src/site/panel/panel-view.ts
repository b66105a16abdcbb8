import { curly } from '../../content/schema/curly.ts';
import type { Ledger, PanelEntry, SessionEntry } from '../../ledger/ledger.ts';
import { metricsOnPanelPage } from '../../measure/metrics.ts';
import { isCode } from '../../measure/statement.ts';
import { CM_PER_INCH } from '../../measure/unit-factors.ts';
import { fixed, showDate } from '../../words/format.ts';
import { inInches } from '../../words/other-unit.ts';
import { compareAddress } from '../compare/browser/compare-address.ts';
import { type FilesInShort, filesInShort } from '../files/file-findings.ts';
import { isPlannable } from '../plan/plan-data.ts';
import { type CorrectionWords, correctionWords } from '../shared/corrections.ts';
import { filesAddress, hasFiles } from '../shared/file-addresses.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { type ShownFigure, shownFigure } from '../shared/shown-figure.ts';
import { beyondView } from './beyond-view.ts';
import { type CalledCaution, calledCautions, eyesInShort } from './called-cautions.ts';
import { type ClaimsView, claimsView } from './claims-view.ts';
import { type EyeStrip, eyeStrip } from './eye-strip.ts';
import { type FoundInFiles, foundInFiles } from './found-in-files.ts';
import { type GridDrawing, gridDrawing } from './grid-drawing.ts';
import { type GridMaps, gridMaps } from './grid-maps.ts';
import { type HeadView, headView } from './head-view.ts';
import { type LightView, lightView } from './light-view.ts';
import { type LimitsView, limitsView } from './limits-view.ts';
import { type PointControl, pointControl } from './point-control.ts';
import { type PurchaseView, purchaseView } from './purchase-view.ts';
import { type ReadingsView, readingsView } from './readings-view.ts';
import { type StandingDrawing, standingDrawing } from './standing-drawing.ts';

/** Everything that a panel's page prints. */
export interface PanelView extends ReadingsView, ClaimsView, PurchaseView {
  slug: string;
  name: string;
  model: string;
  maker: PanelEntry['maker'];
  status: PanelEntry['data']['status'];
  statusReason?: string;
  verdict?: string;
  className?: string;
  /** Where its class stands in the guide. */
  classAddress?: string;
  head: HeadView;
  /** Key figures that the head has no room for. */
  further: ShownFigure[];
  /** Sizes in cm, as text and in inches. */
  facts: Array<{ name: string; text: string; inches?: string }>;
  cautions: CalledCaution[];
  /** What an eye gets, for the first screen. */
  eyes?: string;
  eyeStrip?: EyeStrip;
  /** What the model makes of the light; undefined without a session. */
  modelled?: LightView;
  /** Its readings against published limits; undefined without a session. */
  limits?: LimitsView;
  /** That the light past the edges was measured, and where its readings stand. */
  beyond?: { text: string; address: string };
  /** The panel to scale beside a standing figure; undefined where no size was measured. */
  standing?: StandingDrawing;
  grid?: GridDrawing;
  /** The same as a map, beside the model's. */
  maps?: GridMaps;
  /** Its points one by one, with limits. */
  control?: PointControl;
  gridAbsent?: string;
  hotSpots?: string;
  /** What a photo of the wall and sound clips say. */
  found: FoundInFiles;
  /** What makes a figure doubtful or impossible, which stands at the top, and what is only worth a note. */
  doubts: PanelEntry['flags'];
  noted: PanelEntry['flags'];
  /** What was corrected of it, newest first. */
  corrections: CorrectionWords[];
  methodology: string;
  /** The page of its files from the bench, where it has any. */
  files?: string;
  /** What those say, in a line of its head. */
  filesInShort?: FilesInShort;
  /** Where a session with it can be planned; undefined where the planner would refuse it. */
  plan?: string;
  /** Where it can be set beside others; undefined where it has never been on the bench. */
  compare?: string;
}

/** The view of one panel. */
export function panelView(panel: PanelEntry, ledger: Ledger): PanelView {
  const { data, slug, current } = panel;
  const { currency } = ledger.guide;
  const grid = current && gridDrawing(panel, current);
  const maps = current && gridMaps(panel, current);
  const control = current && pointControl(current);
  const head = headView(panel, ledger);
  const headMetrics = new Set(head.figures.flatMap((it) => [it.figure.metric, it.remark?.figure?.metric]));
  const standing = standingDrawing(panel, grid);
  const lit = current && sessionOfLight(panel, current);
  const beyond = lit && beyondView(panel, lit);
  const eyes = eyesInShort(panel);
  const strip = eyeStrip(panel);
  const modelled = lightView(panel, currency);
  const limits = limitsView(panel, currency);

  return {
    slug,
    name: panel.name,
    model: data.model,
    maker: panel.maker,
    status: data.status,
    ...(data.statusReason && { statusReason: data.statusReason }),
    ...(data.verdict && { verdict: data.verdict }),
    ...(panel.sizeClass && { className: panel.sizeClass.name, classAddress: `/#${panel.sizeClass.id}` }),
    head,
    further: metricsOnPanelPage('key')
      .filter((metric) => !headMetrics.has(metric))
      .map((metric) => shownFigure(panel, panel.figures.get(metric), metric, currency)),
    facts: facts(panel),
    ...readingsView(panel, currency),
    cautions: calledCautions(panel, currency),
    ...(eyes && { eyes }),
    ...(strip && { eyeStrip: strip }),
    ...(modelled && { modelled }),
    ...(limits && { limits }),
    ...claimsView(panel, currency),
    ...(beyond && {
      beyond: {
        text: `Measured past the edges at ${beyond.count} place${beyond.count === 1 ? '' : 's'}`,
        address: `${panelAddress(slug)}methodology/#${beyond.anchor}`,
      },
    }),
    ...(standing && { standing }),
    ...(grid && { grid }),
    ...(maps && { maps }),
    ...(control && { control }),
    ...(!grid && { gridAbsent: gridAbsence(panel) }),
    ...(current?.used.hotSpots && { hotSpots: hotSpotsOf(current) }),
    found: foundInFiles(panel, currency),
    ...purchaseView(panel, ledger),
    doubts: panel.flags.filter((it) => it.severity !== 'note'),
    // Claims that did not hold stand in their table, peaks that nobody claims beside the spectrum.
    noted: panel.flags.filter(
      ({ severity, finding }) =>
        severity === 'note' && !isCode(finding, 'claim-not-held') && !isCode(finding, 'peak-not-claimed'),
    ),
    corrections: panel.corrections.map((it) => correctionWords(it, ledger)),
    methodology: `${panelAddress(slug)}methodology/`,
    ...(hasFiles(panel) && { files: filesAddress(slug), filesInShort: filesInShort(panel) }),
    ...(isPlannable(panel) && { plan: `/plan/?panel=${slug}` }),
    ...(current && { compare: compareAddress([slug]) }),
  };
}

/** The session in which the light of another one was read: that itself, unless it was carried over. */
function sessionOfLight({ sessions }: PanelEntry, { id, readings }: SessionEntry): SessionEntry | undefined {
  const from = readings.carried?.light;
  return sessions.find((it) => (from === undefined ? it.id === id : it.date === from));
}

/** The judgement of the wall photo, with its day where it is an earlier one's. */
function hotSpotsOf({ readings, used }: SessionEntry): string {
  const from = readings.carried?.hotSpots;
  const judged = curly(used.hotSpots ?? '');
  return from === undefined ? judged : `${judged} (from ${showDate(from)})`;
}

function facts({ data }: PanelEntry): PanelView['facts'] {
  const size = (name: string, { width, height }: NonNullable<typeof data.field>) => ({
    name,
    text: `${fixed(width.value, 1)} × ${fixed(height.value, 1)} cm`,
    inches: `${fixed(width.value / CM_PER_INCH, 1)} × ${inInches(height.value)}`,
  });
  return [
    ...(data.field ? [size('LED field', data.field)] : []),
    ...(data.housing ? [size('Housing', data.housing)] : []),
    ...(data.weight ? [{ name: 'Weight', text: `${fixed(data.weight.value, 1)} kg` }] : []),
  ];
}

function gridAbsence(panel: PanelEntry): string {
  if (!panel.current) return 'There is no bench session yet.';
  if (!panel.current.used.grid) return 'The grid was not measured.';
  if (!panel.data.field) return 'The LED field was not measured, so the points have no place.';
  return 'The LED field is too small for the grid’s inset, so the points have no place.';
}
