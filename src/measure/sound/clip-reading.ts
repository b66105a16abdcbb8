import { type CalibrationTone, calibrationTone, SMALLEST_TONE_SHARE } from './calibration-tone.ts';
import { type ClipLevel, clipLevel } from './clip-level.ts';
import { hearingThreshold } from './critical-band.ts';
import type { Samples } from './power-spectrum.ts';
import { findTones, type Tone, type ToneFindings } from './tones.ts';

/** Shortest clip that is told of, s: three stretches for tones. Our own choice. */
export const SHORTEST_CLIP = 1;
/** A tone of the room is the panel's too only where it is this much stronger with the panel on, dB. */
const ABOVE_ROOM = 6;
/** Tones within this share of a frequency are the same. */
const SAME = 0.02;

/** A clip with what clipped of it. */
export interface Clip extends Samples {
  clipped: number;
}

/** Clips of one panel, recorded at one gain. */
export interface Clips {
  on: Clip | undefined;
  off: Clip | undefined;
  calibration: (Clip & { level: number }) | undefined;
}

/** Why levels can't be told though there is a calibration clip. */
export type CalibrationFault = 'no-tone' | 'clipped' | 'other-rate';

/** A tone of the clip with the panel on. */
export interface HeardTone extends Tone {
  /** The room has it as well. */
  isOfRoom: boolean;
  /** Level of a known calibration says that no ear hears it. */
  isBelowHearing: boolean;
}

/** What clips tell. */
export interface ClipReading {
  on: ClipLevel | undefined;
  off: ClipLevel | undefined;
  /** What is added to dB of full scale, dB; or why there is no such number. */
  scale: number | undefined;
  calibration: CalibrationTone | undefined;
  calibrationFault: CalibrationFault | undefined;
  /** Tones of the panel and of the room; undefined where they can't be told. */
  tones: HeardTone[] | undefined;
  whyNoTones: 'no-clip' | 'clipped' | 'short' | undefined;
  findings: ToneFindings | undefined;
  room: ToneFindings | undefined;
}

const isLong = (clip: Clip | undefined): clip is Clip =>
  clip !== undefined && clip.samples.length >= SHORTEST_CLIP * clip.rate;

/** Levels and tones of clips. */
export function clipReading({ on, off, calibration }: Clips): ClipReading {
  const tone = calibration && calibrationTone(calibration);
  const calibrationFault = calibration && faultOf(calibration, tone, on);
  const scale = calibration && tone && !calibrationFault ? calibration.level - tone.level : undefined;
  const room = isLong(off) ? findTones(off) : undefined;
  const whyNoTones = on === undefined ? 'no-clip' : on.clipped > 0 ? 'clipped' : isLong(on) ? undefined : 'short';
  const findings = on && whyNoTones === undefined ? findTones(on) : undefined;
  return {
    on: isLong(on) ? clipLevel(on) : undefined,
    off: isLong(off) ? clipLevel(off) : undefined,
    ...{ scale, calibration: tone, calibrationFault, whyNoTones, findings, room },
    tones: findings?.tones.map((it) => ({
      ...it,
      isOfRoom: room !== undefined && isIn(it, room.tones),
      isBelowHearing: scale !== undefined && it.level + scale < hearingThreshold(it.frequency),
    })),
  };
}

function faultOf(clip: Clip, tone: CalibrationTone | undefined, on: Clip | undefined): CalibrationFault | undefined {
  if (clip.clipped > 0) return 'clipped';
  if (!tone || tone.share < SMALLEST_TONE_SHARE) return 'no-tone';
  return on && on.rate !== clip.rate ? 'other-rate' : undefined;
}

/** The clearest tone that is the panel's and heard; undefined where there is none. */
export function clearestTone(tones: readonly HeardTone[]): HeardTone | undefined {
  return tones.find((it) => !it.isOfRoom && !it.isBelowHearing);
}

const isIn = (tone: Tone, others: readonly Tone[]) =>
  others.some(
    (it) => Math.abs(it.frequency - tone.frequency) < SAME * tone.frequency && tone.level - it.level < ABOVE_ROOM,
  );
