import type { Ledger, PanelEntry } from '../../../ledger/ledger.ts';
import { type Figure, isFigure } from '../../../measure/figure.ts';
import { impossibility } from '../../../measure/handed-on.ts';
import { areNinePointAlike } from '../../../measure/irradiance/bench-procedure.ts';
import { reasonText } from '../../../words/figure-text.ts';
import { panelAddress } from '../../shared/panel-address.ts';
import { rankAbsence } from '../rank-basis.ts';

/** A panel that the picture shows, with the figures that say where. */
export interface DrawnPanel {
  panel: PanelEntry;
  price: Figure;
  power: Figure;
  perWatt: Figure;
}

/** Panels that it does not show, by the reason. */
export interface LeftOut {
  reason: string;
  panels: Array<{ name: string; address: string }>;
}

/** Every panel of a ledger: in the picture, cheapest first, or left out of it. */
export function drawnPanels({ panels, guide }: Ledger): { drawn: DrawnPanel[]; leftOut: LeftOut[] } {
  const drawn: DrawnPanel[] = [];
  const leftOut = new Map<string, LeftOut['panels']>();
  for (const panel of panels.values()) {
    const it = drawnOrReason(panel, guide);
    if (typeof it === 'string') {
      const others = leftOut.get(it) ?? [];
      leftOut.set(it, [...others, { name: panel.name, address: panelAddress(panel.slug) }]);
    } else drawn.push(it);
  }
  return {
    drawn: drawn.toSorted(
      (a, b) =>
        a.price.value - b.price.value ||
        b.power.value - a.power.value ||
        a.panel.slug.localeCompare(b.panel.slug, 'en'),
    ),
    leftOut: [...leftOut].map(([reason, those]) => ({ reason, panels: those })),
  };
}

function drawnOrReason(panel: PanelEntry, guide: Ledger['guide']): DrawnPanel | string {
  const { data, current, figures } = panel;
  if (data.status !== 'published') return rankAbsence(panel);
  const [price, power, perWatt] = (['real-price', 'optical-power', 'price-per-watt'] as const).map((it) =>
    figures.get(it),
  );
  if (!isFigure(power)) return reasonText(power);
  if (!isFigure(price)) return reasonText(price);
  if (!isFigure(perWatt)) return reasonText(perWatt);
  if ([price, power, perWatt].some(impossibility)) return 'impossible as it stands, see its flags';
  if (!current?.conditions.isReference) return otherwise(current, guide);
  // Such a value has no place on a scale of ratios.
  if (!(price.value > 0 && power.value > 0)) return 'a price or a power of nought';
  return { panel, price, power, perWatt };
}

function otherwise(current: PanelEntry['current'], guide: Ledger['guide']): string {
  if (!current) return 'not measured';
  const { distance, methodVersion } = current.conditions;
  const version = areNinePointAlike(methodVersion, guide.methodVersion)
    ? ''
    : ` under version ${methodVersion} of the bench procedure`;
  return `measured at ${distance} cm${version}`;
}

/**
 * How far each panel is from the price–power frontier: by which factor its price would have to fall, or its power to
 * rise, until none of the others beat it; the smaller of the two, and 1 on the frontier.
 */
export function frontierFactors(offers: ReadonlyArray<{ price: number; power: number }>): number[] {
  return offers.map(({ price, power }) => {
    let [strongest, cheapest] = [power, price];
    for (const it of offers) {
      if (it.price <= price && it.power > strongest) strongest = it.power;
      if (it.power >= power && it.price < cheapest) cheapest = it.price;
    }
    return Math.min(strongest / power, price / cheapest);
  });
}
