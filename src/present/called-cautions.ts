import type { PanelEntry } from '../ledger/ledger.ts';
import { type Figure, figureFinder, isFigure } from '../measure/figure.ts';
import { showFigure } from './format.ts';

/** A caution that a panel's own figures call for. */
export interface CalledCaution {
  /** Anchor on the page of cautions. */
  anchor: string;
  title: string;
  text: string;
  /** Metrics that it stands beside. */
  concerns: string[];
}

/**
 * Cautions in the words that a panel's own readings give. They say that a hazard is there, with its size; they
 * never give a verdict, and a missing caution means a missing reading as often as a missing hazard.
 */
export function calledCautions(panel: PanelEntry, currency: string): CalledCaution[] {
  const figure = figureFinder(panel.figures);
  const text = (it: Figure) => showFigure(it, currency).text;
  const distance = panel.current?.conditions.distance;
  const cautions: CalledCaution[] = [];
  /** What a result against a published limit says of this panel, where it has one. */
  const said = (id: string) => {
    const result = panel.current?.limits.find((it) => it.id === id);
    return result && isFigure(result.figure) ? ` ${result.outcome.join(' ')}` : '';
  };

  const peak =
    figure('peak-irradiance-combined') ?? figure('peak-irradiance-near-infrared') ?? figure('peak-irradiance-red');
  const infrared = figure('peak-irradiance-near-infrared');
  const claimsInfrared = (panel.data.claims?.wavelengths ?? []).some((it) => it.peak.value >= 700);
  if (peak) {
    const unseen = infrared
      ? ` Near-infrared alone gives ${text(infrared)}, which the eye does not see and does not turn away from.`
      : claimsInfrared
        ? ' Part of it is near-infrared, which the eye does not see and does not turn away from.'
        : '';
    cautions.push({
      anchor: 'eyes',
      title: 'Eyes',
      text: `Up to ${text(peak)} at ${distance} cm.${unseen}${said('infrared-share-at-reading')} Don’t look into the LEDs, and wear the eye protection that the maker prescribes.`,
      concerns: ['peak-irradiance-combined', 'peak-irradiance-near-infrared'],
    });
    cautions.push({
      anchor: 'skin-and-heat',
      title: 'Skin and heat',
      text: `Light of ${text(peak)} warms the skin. Step back at once where it feels hot; skin that feels little can’t warn you.`,
      concerns: ['peak-irradiance-combined'],
    });
  }
  const flicker = (['combined', 'red', 'near-infrared'] as const).flatMap((mode) => {
    const depth = figure(`flicker-${mode}`);
    return depth && depth.bound !== 'below' && depth.value >= 1
      ? [{ depth, frequency: figure(`flicker-frequency-${mode}`) }]
      : [];
  });
  const worst = flicker.toSorted((a, b) => b.depth.value - a.depth.value)[0];
  const pulsing = (['combined', 'red', 'near-infrared'] as const).map((mode) => said(`pulsing-${mode}`)).join('');
  if (worst) {
    cautions.push({
      anchor: 'flicker',
      title: 'Flicker',
      text: `The light flickers by ${text(worst.depth)}${worst.frequency ? ` at ${text(worst.frequency)}` : ''}.${pulsing} Who is sensitive to flicker, or has had seizures or migraine from it, should ask a physician first.`,
      concerns: ['flicker-combined', 'flicker-red', 'flicker-near-infrared'],
    });
  }
  const magnetic = figure('magnetic-field-on');
  const room = figure('magnetic-field-off');
  if (magnetic && magnetic.bound !== 'below' && !(room && room.bound !== 'below' && magnetic.value <= room.value)) {
    const at = panel.current?.readings.magnetic?.distance;
    cautions.push({
      anchor: 'implants-and-fields',
      title: 'Implants and fields',
      text: `A magnetic field of ${text(magnetic)}${at ? ` at ${at.written}` : ''}. With a pacemaker or another active implant, ask its clinic and keep the distance that they name.`,
      concerns: ['magnetic-field-on', 'electric-field-on', 'radio-field-on'],
    });
  }
  const draw = figure('mains-draw-combined');
  if (draw) {
    cautions.push({
      anchor: 'mains-electricity',
      title: 'Mains electricity',
      text: `Draws ${text(draw)} from the mains. Keep it away from water, hang it as its maker says, and leave its inside to licensed people; local codes decide where it may be fixed.`,
      concerns: ['mains-draw-combined'],
    });
  }
  return cautions;
}
