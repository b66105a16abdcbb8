import type { Problem } from '../../content/schema/problem.ts';
import { type Cell, dayIn } from '../ask/cell.ts';

/** A calibration as flags give it; what is undefined was not said. */
export interface CalibrationFlags {
  date?: string;
  validMonths?: string;
  relative?: string;
  absolute?: string;
  coverageFactor?: string;
  reference?: string;
}

/** A calibration to be added: what is written into the file. */
export interface NewCalibration {
  date: string;
  validMonths: number;
  relative: number;
  absolute?: number;
  coverageFactor?: number;
  reference: string;
}

/**
 * Reads a calibration, or all that is wrong with it.
 *
 * @param unit of the instrument's display, which an absolute uncertainty may have behind it
 */
export function readCalibration(
  flags: CalibrationFlags,
  { today, unit }: { today: string; unit: string },
): { calibration: NewCalibration; problems: [] } | { calibration: undefined; problems: Problem[] } {
  const problems: Problem[] = [];
  const fail = (flag: string, found: string, wanted: string, hint?: string) =>
    problems.push({ file: 'the command line', field: flag, found, wanted, hint });
  const value = <T>(flag: string, text: string | undefined, read: (text: string) => Cell<T>): T | undefined => {
    if (text === undefined || text === '') return undefined;
    const cell = read(text);
    if ('value' in cell) return cell.value;
    fail(flag, `"${text.slice(0, 80)}"`, cell.wanted, cell.hint);
    return undefined;
  };
  const date = value('--date', flags.date, (text) => dayIn(text, today)) ?? today;
  const validMonths = value('--valid-months', flags.validMonths, monthsIn);
  const relative = value('--relative', flags.relative, (text) =>
    numberIn(text, ['%'], { max: 100, wanted: 'the expanded uncertainty in % of the reading, 0 to 100, such as 4' }),
  );
  const absolute = value('--absolute', flags.absolute, (text) =>
    numberIn(text, [unit], {
      max: Number.POSITIVE_INFINITY,
      wanted: `the expanded uncertainty in ${unit}, such as 0.1`,
    }),
  );
  const coverageFactor = value('--coverage-factor', flags.coverageFactor, (text) =>
    numberIn(text, [], { max: 5, isPositive: true, wanted: 'a coverage factor k above 0, at most 5, such as 2' }),
  );
  const reference = flags.reference?.trim();
  const missing = 'what the certificate says';
  if (validMonths === undefined && !flags.validMonths)
    fail('--valid-months', 'nothing', 'months until the next one is due, such as 24');
  if (!flags.relative && !flags.absolute) {
    fail('--relative', 'nothing', `${missing}: --relative in %, --absolute in ${unit}, or both`);
  } else if (relative !== undefined && relative === 0 && !absolute && !flags.absolute) {
    fail('--relative', '0', 'an uncertainty above 0, here or in --absolute', 'no calibration is exact');
  }
  if (!reference) fail('--reference', 'nothing', 'against what, and by whom in general terms');
  if (problems.length > 0 || validMonths === undefined || !reference) return { calibration: undefined, problems };
  return {
    calibration: {
      date,
      validMonths,
      relative: relative ?? 0,
      ...(absolute !== undefined && { absolute }),
      ...(coverageFactor !== undefined && { coverageFactor }),
      reference,
    },
    problems: [],
  };
}

function monthsIn(text: string): Cell<number> {
  const months = Number(/^(\d{1,3})(?: *months?)?$/.exec(text.trim())?.[1]);
  return months >= 1 && months <= 120 ? { value: months } : { wanted: 'whole months, 1 to 120, such as 24' };
}

/** A number, with one of some units behind it or none; a decimal comma is one. */
function numberIn(
  text: string,
  units: readonly string[],
  { max, isPositive = false, wanted }: { max: number; isPositive?: boolean; wanted: string },
): Cell<number> {
  const [, number = '', unit = ''] = /^([\d.,]+)\s*(.*)$/.exec(text.trim()) ?? [];
  const value = /^\d+(?:[.,]\d+)?$/.test(number) ? Number(number.replace(',', '.')) : Number.NaN;
  const isRight = value <= max && (isPositive ? value > 0 : value >= 0) && (unit === '' || units.includes(unit));
  return isRight ? { value } : { wanted };
}
