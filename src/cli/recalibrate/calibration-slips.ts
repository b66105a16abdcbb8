import { counted } from '../../content/read/problem-list.ts';
import type { Calibration } from '../../content/schema/instrument.ts';
import { calibrationDue } from '../../ledger/instruments.ts';
import { showDate } from '../../words/format.ts';
import type { Slip } from '../ask/slips.ts';
import type { NewCalibration } from './calibration-input.ts';
import type { CalibrationPlan, SessionUse } from './plan.ts';

/** An uncertainty this many times that of the calibration before is odd: a misplaced point, or k forgotten. Our own choice. */
const ODD_STEP = 3;

/** What is often a slip in a calibration, and what accepting it means. */
export const CALIBRATION_SLIPS = {
  older: 'a day before that of the newest calibration, which stays in use after it',
  uncertainty: `an uncertainty more than ${ODD_STEP} times that of the one before, or under a third of it`,
  gap: 'sessions were read after the one before had lapsed; they keep it, and say so',
} as const;

/** What is odd in a new calibration beside the one before it. */
export function calibrationSlips(calibration: NewCalibration, plan: CalibrationPlan, unit: string): Slip[] {
  const { before, newest } = plan;
  const slips: Slip[] = [];
  const slip = (id: keyof typeof CALIBRATION_SLIPS, text: string, offer = 'Write it all the same?') =>
    slips.push({ id, entry: undefined, text, offer });
  if (newest && calibration.date < newest.date) {
    slip(
      'older',
      `${showDate(calibration.date)} is before ${showDate(newest.date)}, the day of the newest calibration.`,
    );
  }
  if (before) {
    for (const [name, now, then, sign] of [
      ['relative', calibration.relative, before.relative, '%'],
      ['absolute', calibration.absolute ?? 0, before.absolute, unit],
    ] as const) {
      const [mine, other] = [now / (calibration.coverageFactor ?? 2), then / before.coverageFactor];
      if (mine === 0 || other === 0 || Math.max(mine / other, other / mine) <= ODD_STEP) continue;
      const change =
        mine > other ? `grown by a factor of ${shown(mine / other)}` : `shrunk by a factor of ${shown(other / mine)}`;
      const values = `${now} ${sign}, and ${then} ${sign} on ${showDate(before.date)}`;
      slip('uncertainty', `The ${name} uncertainty has ${change}: ${values} (each with its own k).`);
    }
    const unheld = sessionsInGap(calibration, before, plan.kept);
    if (unheld.length > 0) {
      slip(
        'gap',
        `The calibration of ${showDate(before.date)} held until ${showDate(calibrationDue(before))}. ${counted(unheld.length, 'session')} read after that and before ${showDate(calibration.date)} ${unheld.length === 1 ? 'keeps it, and says' : 'keep it, and say'} that it had lapsed.`,
      );
    }
  }
  return slips;
}

/** Sessions between the day on which a calibration lapsed and the day of the next. */
function sessionsInGap({ date }: NewCalibration, before: Calibration, kept: readonly SessionUse[]): SessionUse[] {
  const due = calibrationDue(before);
  return kept.filter((it) => it.date > due && it.date < date);
}

const shown = (factor: number) => (factor < 10 ? factor.toFixed(1).replace(/\.0$/, '') : String(Math.round(factor)));
