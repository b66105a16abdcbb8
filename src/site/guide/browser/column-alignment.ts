/**
 * Class names that keep the figures of a column in line at the point and at ±, whatever digits their uncertainties leave
 * them: each stands for the room of the digits, or of the point with digits, that a figure has not and another has. Figures
 * have one width; the style sheet knows it. No DOM.
 */

/** A figure in words, as a column shows it. */
export interface ColumnFigure {
  value: string;
  plusMinus?: string | undefined;
}

/** Digits behind the point. */
const decimalsOf = (text: string) => /\.(\d+)/.exec(text)?.[1]?.length ?? 0;
const digitsOf = (text: string) => text.replace(/\D/g, '').length;

/** What a figure of the column needs: class names, empty where it has all the room that the widest takes. */
export function alignment(column: readonly ColumnFigure[]): (it: ColumnFigure) => string {
  const decimals = Math.max(0, ...column.map((it) => decimalsOf(it.value)));
  const errors = column.flatMap((it) => it.plusMinus ?? []);
  const digits = Math.max(0, ...errors.map(digitsOf));
  const hasPoint = errors.some((it) => it.includes('.'));
  return ({ value, plusMinus }) => {
    const own = decimalsOf(value);
    const before = room('b', decimals - own, own === 0 && decimals > 0);
    if (errors.length === 0) return before;
    const lacksPoint = hasPoint && !plusMinus?.includes('.');
    const after = room('r', digits - digitsOf(plusMinus ?? ''), lacksPoint);
    return [before, after, plusMinus === undefined && 'o'].filter(Boolean).join(' ');
  };
}

/** `b2` for two digits, `b2p` for two and the point; empty for nothing. */
function room(side: 'b' | 'r', digits: number, withPoint: boolean): string {
  if (digits === 0 && !withPoint) return '';
  return `${side}${digits}${withPoint ? 'p' : ''}`;
}
