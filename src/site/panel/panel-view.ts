import type { Ledger, PanelEntry } from '../../ledger/ledger.ts';
import { fixed } from '../../words/format.ts';
import { rankSentence } from '../guide/rank-sentence.ts';
import { isPlannable } from '../plan/plan-data.ts';
import { panelAddress } from '../shared/panel-address.ts';
import { beyondView } from './beyond-view.ts';
import { type CalledCaution, calledCautions } from './called-cautions.ts';
import { type ClaimsView, claimsView } from './claims-view.ts';
import { type GridDrawing, gridDrawing } from './grid-drawing.ts';
import { type LightView, lightView } from './light-view.ts';
import { type LimitsView, limitsView } from './limits-view.ts';
import { type PurchaseView, purchaseView } from './purchase-view.ts';
import { type ReadingsView, readingsView } from './readings-view.ts';

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
  /** "Bought, paid by the membership fees." */
  obtained: string;
  facts: Array<{ name: string; text: string }>;
  rank: string;
  frontier?: string;
  cautions: CalledCaution[];
  /** What the model makes of the light; undefined without a session. */
  modelled?: LightView;
  /** Its readings against published limits; undefined without a session. */
  limits?: LimitsView;
  /** That the light past the edges was measured, and where its readings stand. */
  beyond?: { text: string; address: string };
  grid?: GridDrawing;
  gridAbsent?: string;
  hotSpots?: string;
  flags: PanelEntry['flags'];
  methodology: string;
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
  const beyond = current && beyondView(panel, current);
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
    ...(panel.sizeClass && { className: panel.sizeClass.name }),
    obtained: obtainedWords(data.obtained),
    facts: facts(panel),
    rank: rankSentence(panel, ledger),
    ...(panel.frontier && {
      frontier:
        panel.frontier === 'on'
          ? 'On the price–power frontier: no panel measured alike costs no more and gives more light.'
          : 'A close call at the price–power frontier: what beats it does so by no more than the uncertainty.',
    }),
    ...readingsView(panel, currency),
    cautions: calledCautions(panel, currency),
    ...(modelled && { modelled }),
    ...(limits && { limits }),
    ...claimsView(panel, currency),
    ...(beyond && {
      beyond: {
        text: `Measured past the edges at ${beyond.count} place${beyond.count === 1 ? '' : 's'}`,
        address: `${panelAddress(slug)}methodology/#${beyond.anchor}`,
      },
    }),
    ...(grid && { grid }),
    ...(!grid && { gridAbsent: gridAbsence(panel) }),
    ...(current?.readings.hotSpots && { hotSpots: current.readings.hotSpots }),
    ...purchaseView(panel, ledger),
    flags: panel.flags,
    methodology: `${panelAddress(slug)}methodology/`,
    ...(isPlannable(panel) && { plan: `/plan/?panel=${slug}` }),
    ...(current && { compare: `/compare/?with=${slug}` }),
  };
}

function obtainedWords(obtained: PanelEntry['data']['obtained']): string {
  if (!obtained) return 'How it was obtained is not recorded.';
  const how = { bought: 'Bought', lent: 'Lent by the maker', given: 'Given by the maker' }[obtained.how];
  return `${how}. Paid for by: ${obtained.paidBy.replace(/\.$/, '')}.${obtained.note ? ` ${obtained.note}` : ''}`;
}

function facts({ data }: PanelEntry): Array<{ name: string; text: string }> {
  const size = (it: NonNullable<typeof data.field>) => `${fixed(it.width.value, 1)} × ${fixed(it.height.value, 1)} cm`;
  return [
    ...(data.field ? [{ name: 'LED field', text: size(data.field) }] : []),
    ...(data.housing ? [{ name: 'Housing', text: size(data.housing) }] : []),
    ...(data.weight ? [{ name: 'Weight', text: `${fixed(data.weight.value, 1)} kg` }] : []),
  ];
}

function gridAbsence(panel: PanelEntry): string {
  if (!panel.current) return 'There is no bench session yet.';
  if (!panel.current.readings.grid) return 'The grid was not measured.';
  if (!panel.data.field) return 'The LED field was not measured, so the points have no place.';
  return 'The LED field is too small for the grid’s inset, so the points have no place.';
}
