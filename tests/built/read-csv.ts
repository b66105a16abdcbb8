/**
 * Reads comma-separated values as RFC 4180 defines them: quoted fields may hold commas, line ends and doubled
 * quotes. The first line names the fields.
 *
 * @throws where a quote is not closed, or a line has another number of fields than the first
 */
export function readCsv(text: string): Array<Record<string, string>> {
  const rows: string[][] = [];
  let row: string[] = [];
  let end = 0;
  while (end < text.length) {
    const field = /^(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r?\n|$)/.exec(text.slice(end, end + 10_000));
    if (!field) throw new Error(`no field at character ${end}: ${text.slice(end, end + 40)}`);
    row.push(field[1]?.replaceAll('""', '"') ?? field[2] ?? '');
    end += field[0].length;
    if (field[3] !== ',') {
      rows.push(row);
      row = [];
    }
  }
  const [names = [], ...lines] = rows;
  return lines.map((line, i) => {
    if (line.length !== names.length) throw new Error(`line ${i + 2} has ${line.length} fields, not ${names.length}`);
    return Object.fromEntries(names.map((name, j) => [name, line[j] as string]));
  });
}
