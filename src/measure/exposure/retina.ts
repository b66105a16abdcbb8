import { type Figure, gap, isFigure, type Unassessed } from '../figure.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import { makeFigure, propagate, rectangular, typeB } from '../uncertainty.ts';
import type { HeldFigure } from './limit.ts';
import { leavingOut } from './made-of.ts';
import { type Emitters, emitterSolidAngle, litSolidAngle, projectedSolidAngle, sourceAngle } from './source-view.ts';

declare module '../statement.ts' {
  interface StatementData {
    'retina-needs-radiance': object;
    /** What a lower bound rests on. */
    'retina-from-field': object;
    'retina-from-emitters': { count: number };
    'retina-from-one': object;
    'emitter-edge': object;
    /** Half-width as fraction of the diameter. */
    'emitter-edge-taken': { halfWidth: number };
    'retina-unlike-emitters': object;
    'retina-one-brightest': object;
  }
}

/** Limits of radiance over the source's angle, W/(m² sr) rad. */
export const WEAK_STIMULUS = 6000;
/** At 10 s, for light that is seen: 50 000 t^-0.25; the table of risk groups has it as 28 000. */
export const SEEN_LIGHT = 50_000 / 10 ** 0.25;

/** What looks lit of an emitter is a matter of opinion to so much of its diameter, either way. Our own choice. */
const EDGE = 0.1;

/** Light of a mode as it counts for the retina. */
export interface RetinalLight {
  /** mW/cm², highest over the plane. */
  irradiance: Figure;
  /** What a unit of it counts: see `retinalShare`. */
  weight: Figure;
}

/** What bounds of the radiance follow from. */
export interface RetinaView {
  /** Sides of the LED field, cm. */
  width: Figure;
  height: Figure;
  /** From the LEDs to where it was read, cm. */
  distance: number;
  /** As somebody looked at them; `nearInfrared` of all of them shine there. */
  emitters?: { diameter: number; count: number; nearInfrared: number };
  'near-infrared'?: RetinalLight;
  combined?: RetinalLight;
}

/** A bound of the retina's share of a limit; or nothing known of it. */
export interface RetinaResult extends HeldFigure {
  hazard: 'retina';
  /** With near-infrared alone the rule for a weak visual stimulus; with both channels on that for 10 s of seen light. */
  mode: keyof typeof RETINA_LIMITS;
  end: 'least' | 'most';
  /** Angle of the source, rad; undefined where there is no figure. */
  angle: number | undefined;
  /** What the bound from below rests on. */
  isFromEmitters: boolean;
  /** From where the irradiance was read, cm. */
  readFrom: number | undefined;
}

/** Limits by the mode, W/(m² sr) rad. */
export const RETINA_LIMITS = { 'near-infrared': WEAK_STIMULUS, combined: SEEN_LIGHT } as const;

const METRICS = {
  'near-infrared': { least: 'retinal-hazard', most: 'retina-most' },
  combined: { least: 'retina-seen', most: 'retina-seen-most' },
} as const satisfies Record<keyof typeof RETINA_LIMITS, Record<'least' | 'most', ListedMetricId>>;

/**
 * Bounds of the radiance as shares of the thermal limits for the retina (IEC 62471:2006, 4.3.5 and 4.3.6; clauses from
 * memory, the rule for weak stimuli from a secondary source). No radiance is measured. Irradiance E is the sum of
 * radiance times projected solid angle over all that is lit, so somewhere radiance is E over that angle or more; and
 * where one emitter gave all of E, its radiance were E over its own solid angle, which is the most. Limits are for
 * radiance averaged over 11 mrad; the source's angle is that of the field, which is the strict one.
 *
 * One result with a gap where nothing tells of it.
 */
export function retinaResults(session: string, view: RetinaView | undefined): RetinaResult[] {
  const known = view
    ? (['near-infrared', 'combined'] as const).flatMap((mode) => {
        const light = view[mode];
        return light ? boundsOf(session, mode, light, view) : [];
      })
    : [];
  if (known.some((it) => it.id === METRICS['near-infrared'].least)) return known;
  const none: RetinaResult = {
    hazard: 'retina',
    id: METRICS['near-infrared'].least,
    figure: gap(METRICS['near-infrared'].least, { code: 'retina-needs-radiance' }),
    limit: 'retina',
    mode: 'near-infrared',
    end: 'least',
    angle: undefined,
    isFromEmitters: false,
    readFrom: undefined,
  };
  return [none, ...known];
}

/** What is lit, as a solid angle with its error; sr. */
interface Lit {
  figure: Figure;
  isFromEmitters: boolean;
}

function boundsOf(session: string, mode: RetinaResult['mode'], light: RetinalLight, view: RetinaView): RetinaResult[] {
  const { width, height, distance, emitters } = view;
  const field = { width: width.value, height: height.value, distance };
  const angle = sourceAngle(field);
  const lit = emitters && {
    count: mode === 'combined' ? emitters.count : emitters.nearInfrared,
    diameter: emitters.diameter,
  };
  const least = litView(session, METRICS[mode].least, view, lit);
  const results = [
    result(session, mode, 'least', light, least, angle, distance),
    ...(lit
      ? [
          result(
            session,
            mode,
            'most',
            light,
            { figure: oneEmitter(session, mode, distance, lit), isFromEmitters: true },
            angle,
            distance,
          ),
        ]
      : []),
  ];
  return results;
}

function result(
  session: string,
  mode: RetinaResult['mode'],
  end: RetinaResult['end'],
  { irradiance, weight }: RetinalLight,
  { figure: solid, isFromEmitters }: Lit,
  angle: number,
  distance: number,
): RetinaResult {
  const metric = METRICS[mode][end];
  const limit = RETINA_LIMITS[mode];
  // 1 mW/cm² is 10 W/m².
  const scale = (100 * 10 * angle) / limit;
  const value = (scale * irradiance.value * weight.value) / solid.value;
  const sign = end === 'least' ? '≥' : '≤';
  const share = propagate(
    {
      ...identityOf(metric, session),
      // Of a source that is taken to look a certain way.
      basis: 'modelled',
      bound: end === 'least' ? 'above' : 'below',
      calculation: `s ${sign} 100 × (10 × ${number(irradiance.value)} mW/cm² × ${number(weight.value)} ÷ ${number(solid.value)} sr) ÷ (${number(limit)} ÷ ${number(angle)}) W/(m² sr) = ${number(value)} %`,
      notes: solid.notes,
    },
    value,
    [
      { figure: irradiance, sensitivity: value / irradiance.value },
      { figure: weight, sensitivity: value / weight.value },
      { figure: solid, sensitivity: -value / solid.value },
    ],
  );
  const inputs = [irradiance.id, ...weight.inputs, ...solid.inputs];
  const figure = leavingOut({ ...share, inputs }, end === 'least' ? UNLIKE : BRIGHTEST);
  return {
    hazard: 'retina',
    id: metric,
    figure,
    limit: 'retina',
    mode,
    end,
    angle,
    isFromEmitters,
    readFrom: distance,
  };
}

const UNLIKE: Unassessed = { what: { code: 'retina-unlike-emitters' }, reason: { code: 'retina-needs-radiance' } };
const BRIGHTEST: Unassessed = { what: { code: 'retina-one-brightest' }, reason: { code: 'retina-needs-radiance' } };

/** The smaller of what the field fills and what its emitters fill of the view. */
function litView(session: string, metric: ListedMetricId, view: RetinaView, emitters: Emitters | undefined): Lit {
  const { width, height, distance } = view;
  const solidOf = (w: number, h: number, by: number) => {
    const field = { width: w, height: h, distance };
    const whole = projectedSolidAngle(field);
    return emitters ? Math.min(whole, litSolidAngle(field, { ...emitters, diameter: emitters.diameter * by })) : whole;
  };
  const value = solidOf(width.value, height.value, 1);
  const isFromEmitters = value < projectedSolidAngle({ width: width.value, height: height.value, distance });
  const slope = (of: (step: number) => number, step: number) => (of(step) - of(-step)) / (2 * step);
  const step = 0.01;
  const identity = {
    ...identityOf(metric, session),
    id: `${session}/${metric}/lit`,
    unit: '1' as const,
    basis: 'derived' as const,
    notes: [
      isFromEmitters && emitters
        ? ({ code: 'retina-from-emitters', count: emitters.count } as const)
        : ({ code: 'retina-from-field' } as const),
    ],
  };
  const terms = [
    { figure: width, sensitivity: slope((by) => solidOf(width.value + by, height.value, 1), step * width.value) },
    { figure: height, sensitivity: slope((by) => solidOf(width.value, height.value + by, 1), step * height.value) },
  ];
  if (isFromEmitters) {
    terms.push({
      figure: edgeOf(session, metric),
      sensitivity: slope((by) => solidOf(width.value, height.value, 1 + by), step),
    });
  }
  const inputs = [width.id, height.id];
  return { figure: { ...propagate(identity, value, terms), inputs }, isFromEmitters };
}

/** One emitter straight ahead. */
function oneEmitter(session: string, mode: RetinaResult['mode'], distance: number, { diameter }: Emitters): Figure {
  const metric = METRICS[mode].most;
  const value = emitterSolidAngle(distance, diameter);
  const step = 0.01;
  const per =
    (emitterSolidAngle(distance, diameter * (1 + step)) - emitterSolidAngle(distance, diameter * (1 - step))) /
    (2 * step);
  const identity = {
    ...identityOf(metric, session),
    id: `${session}/${metric}/lit`,
    unit: '1' as const,
    basis: 'derived' as const,
    notes: [{ code: 'retina-from-one' } as const],
  };
  return { ...propagate(identity, value, [{ figure: edgeOf(session, metric), sensitivity: per }]), inputs: [] };
}

/** The diameter of an emitter as a factor of what was typed. */
function edgeOf(session: string, metric: ListedMetricId): Figure {
  return makeFigure(
    { ...identityOf(metric, session), id: `${session}/emitter`, unit: '1', basis: 'measured', inputs: [] },
    1,
    {
      budget: [
        {
          source: typeB({
            key: `${session.split('/')[0]}/emitter-edge`,
            what: { code: 'emitter-edge' },
            distribution: 'rectangular',
            evaluation: { code: 'emitter-edge-taken', halfWidth: EDGE },
          }),
          contribution: rectangular(EDGE),
        },
      ],
    },
  );
}

/** True where it is certain that the limit is passed: the bound from below lies above it. */
export function isRetinaOver({ end, figure }: RetinaResult): boolean {
  return end === 'least' && isFigure(figure) && (figure.interval95?.[1] ?? figure.value) > 100;
}
