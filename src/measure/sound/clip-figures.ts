import { soundFigure } from '../exposure/sound-result.ts';
import { type BudgetComponent, type FigureOrGap, gap, type Unassessed } from '../figure.ts';
import { identityOf, type ListedMetricId } from '../metrics.ts';
import { number } from '../numbers.ts';
import type { Statement } from '../statement.ts';
import { makeFigure, rectangular, typeA, typeB, type UncertaintyKnowledge } from '../uncertainty.ts';
import type { ClipLevel } from './clip-level.ts';
import { type CalibrationFault, type ClipReading, clearestTone, SHORTEST_CLIP } from './clip-reading.ts';
import { TONES_FROM } from './critical-band.ts';

declare module '../statement.ts' {
  interface StatementData {
    'clip-not-calibrated': object;
    'clip-calibration-unusable': { fault: CalibrationFault };
    /** s */
    'clip-too-short': { shortest: number };
    'clip-overdriven': object;
    'clip-missing': object;
    'clip-room-missing': object;
    /** Hz between which none was found. */
    'no-tone-found': { from: number; to: number };
    'calibrator-level': object;
    /** dB at k = 2 */
    'calibrator-as-stated': { level: number; expanded: number };
    'calibrator-not-stated': object;
    'clip-scatter': object;
    'clip-scatter-of': { stretches: number };
    'microphone-response': object;
    'microphone-as-flat': object;
    'room-not-recorded': object;
    'tone-ratio-scatter': object;
    'tone-band-width': object;
    'half-band': object;
  }
}

/** Hann-windowed stretches that overlap by half count for so many apart (Welch 1967, from memory). */
const APART = 0.65;

/** What levels and tones of clips are made figures of. */
export interface ClipInputs {
  /** `<panel>/<date>` */
  session: string;
  reading: ClipReading;
  /** As the session states it: the calibrator's level and its uncertainty at 95 %, dB. */
  calibrator: { level: number; expanded: number | undefined } | undefined;
  hasRoom: boolean;
}

/** Figures of clips: levels, the panel alone, and the clearest tone. */
export function clipFigures(inputs: ClipInputs): FigureOrGap[] {
  const { session, reading, hasRoom } = inputs;
  const on = levelFigure(inputs, 'sound-clip-on', 'on', reading.on, ({ level }) => level);
  const highest = levelFigure(inputs, 'sound-clip-highest', 'on', reading.on, (it) => it.highest);
  const off = hasRoom
    ? levelFigure(inputs, 'sound-clip-off', 'off', reading.off, ({ level }) => level)
    : gap('sound-clip-off', { code: 'clip-room-missing' });
  const panel = soundFigure(session, { on, off, distance: undefined }, 'sound-clip-panel');
  return [on, highest, off, panel, ...toneFigures(inputs)];
}

const UNASSESSED: Unassessed[] = [{ what: { code: 'microphone-response' }, reason: { code: 'microphone-as-flat' } }];

function levelFigure(
  { session, reading, calibrator }: ClipInputs,
  metric: ListedMetricId,
  clip: 'on' | 'off',
  level: ClipLevel | undefined,
  which: (level: ClipLevel) => number,
): FigureOrGap {
  const { scale, calibrationFault, whyNoTones } = reading;
  if (calibrationFault) return gap(metric, { code: 'clip-calibration-unusable', fault: calibrationFault });
  if (scale === undefined || !calibrator) return gap(metric, { code: 'clip-not-calibrated' });
  if (clip === 'on' && whyNoTones === 'clipped') return gap(metric, { code: 'clip-overdriven' });
  if (!level) return gap(metric, { code: 'clip-too-short', shortest: SHORTEST_CLIP });
  const value = which(level) + scale;
  const path = `${session}/soundClips.${clip}`;
  const knowledge: UncertaintyKnowledge =
    calibrator.expanded === undefined
      ? { absent: { code: 'calibrator-not-stated' } }
      : {
          budget: [
            calibratorComponent(session, { level: calibrator.level, expanded: calibrator.expanded }),
            scatterComponent(`${session}/${metric}`, level),
          ],
          unassessed: UNASSESSED,
        };
  return makeFigure(
    {
      ...identityOf(metric, session),
      ...{ basis: 'measured', inputs: [path, `${session}/soundClips.calibration`] },
      calculation: `L = ${number(which(level))} dB + ${number(scale)} dB = ${number(value)} dB(A)`,
      lowest: Number.NEGATIVE_INFINITY,
    },
    value,
    knowledge,
  );
}

function calibratorComponent(session: string, stated: { level: number; expanded: number }): BudgetComponent {
  return {
    source: typeB({
      key: `${session}/soundClips.calibration`,
      what: { code: 'calibrator-level' },
      distribution: 'normal',
      evaluation: { code: 'calibrator-as-stated', ...stated },
    }),
    contribution: stated.expanded / 2,
  };
}

function scatterComponent(id: string, { scatter, stretches }: ClipLevel): BudgetComponent {
  return {
    source: typeA(
      { key: `${id}/scatter`, what: { code: 'clip-scatter' }, evaluation: { code: 'clip-scatter-of', stretches } },
      { degreesOfFreedom: stretches - 1 },
    ),
    contribution: scatter / Math.sqrt(stretches),
  };
}

function toneFigures({ session, reading, hasRoom }: ClipInputs): FigureOrGap[] {
  const { tones, findings, whyNoTones } = reading;
  const none = (reason: Statement) => [gap('tone-frequency', reason), gap('tone-to-noise', reason)];
  if (!tones || !findings) {
    if (whyNoTones === 'clipped') return none({ code: 'clip-overdriven' });
    return none(
      whyNoTones === 'no-clip' ? { code: 'clip-missing' } : { code: 'clip-too-short', shortest: SHORTEST_CLIP },
    );
  }
  const tone = clearestTone(tones);
  if (!tone) return none({ code: 'no-tone-found', from: TONES_FROM, to: findings.upTo });
  const { step, averages } = findings.spectrum;
  const apart = Math.max(2, Math.floor(APART * averages));
  const shared = {
    basis: 'measured' as const,
    inputs: [`${session}/soundClips.on`],
    notes: hasRoom ? [] : [{ code: 'room-not-recorded' } as const],
  };
  const ratio: BudgetComponent = {
    source: typeA(
      {
        key: `${session}/tone-to-noise/scatter`,
        what: { code: 'tone-ratio-scatter' },
        evaluation: { code: 'clip-scatter-of', stretches: averages },
      },
      { degreesOfFreedom: apart - 1 },
    ),
    contribution: tone.scatter / Math.sqrt(apart),
  };
  const band: BudgetComponent = {
    source: typeB({
      key: `${session}/tone-frequency/band`,
      what: { code: 'tone-band-width' },
      distribution: 'rectangular',
      evaluation: { code: 'half-band' },
    }),
    contribution: rectangular(step / 2),
  };
  return [
    makeFigure({ ...identityOf('tone-frequency', session), ...shared }, tone.frequency, { budget: [band] }),
    makeFigure(
      {
        ...identityOf('tone-to-noise', session),
        ...shared,
        calculation: `T = ${number(tone.ratio)} dB, T₀ = ${number(tone.criterion)} dB`,
        lowest: Number.NEGATIVE_INFINITY,
      },
      tone.ratio,
      { budget: tone.scatter > 0 ? [ratio] : [] },
    ),
  ];
}
