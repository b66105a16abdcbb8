/** One measured thing, with what it was held against and the budget it must keep. */
export interface Line {
  what: string;
  measured: string;
  /** The yardstick of the same run, in words. */
  against?: string;
  ratio?: number;
  budget?: string;
  /** Left out where there is no budget. */
  isWithin?: boolean;
}

/** A group of lines under a heading, with remarks that the numbers need. */
export interface Section {
  title: string;
  lines: Line[];
  remarks?: string[];
}

/** The value in the middle; the mean of the middle two where there are two. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  const [low, high] = [sorted[Math.ceil(middle) - 1], sorted[Math.floor(middle)]];
  if (low === undefined || high === undefined) throw new Error('a median of no values');
  return (low + high) / 2;
}

/** `4.31 s (4.20 to 4.55)`: the median of several runs and how far they spread. */
export function spread(values: readonly number[], unit: string, decimals: number): string {
  const middle = `${median(values).toFixed(decimals)} ${unit}`;
  if (values.length === 1) return middle;
  return `${middle} (${Math.min(...values).toFixed(decimals)} to ${Math.max(...values).toFixed(decimals)})`;
}

/** A section as a table in plain text. */
export function printed({ title, lines, remarks = [] }: Section): string {
  const rows = lines.map((it) => [
    it.what,
    it.measured,
    it.against ?? '',
    it.ratio?.toFixed(2) ?? '',
    it.budget ?? '',
    it.isWithin === undefined ? '' : it.isWithin ? 'within' : 'OVER',
  ]);
  const table = [['', 'measured', 'against', 'ratio', 'budget', ''], ...rows];
  const widths = table[0]?.map((_, column) => Math.max(...table.map((row) => row[column]?.length ?? 0))) ?? [];
  const text = table.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join('  ')
      .trimEnd(),
  );
  return [`== ${title}`, ...text, ...remarks.map((it) => `   ${it}`)].join('\n');
}
