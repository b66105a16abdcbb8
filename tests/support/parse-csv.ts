/**
 * Reads CSV as RFC 4180 has it (from memory): fields in quotes may hold commas, line ends and doubled quotes. It
 * shares nothing with the library that writes the files.
 *
 * @throws where a quote is not closed, or stands in the middle of a plain field
 */
export function parseCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  const endRow = () => {
    rows.push(row);
    row = [];
  };
  while (at < text.length) {
    let field = '';
    if (text[at] === '"') {
      at++;
      for (;;) {
        const quote = text.indexOf('"', at);
        if (quote < 0) throw new Error('a quote is not closed');
        field += text.slice(at, quote);
        at = quote + 1;
        if (text[at] !== '"') break;
        field += '"';
        at++;
      }
    } else {
      const rest = /[^,\r\n]*/y;
      rest.lastIndex = at;
      field = rest.exec(text)?.[0] ?? '';
      if (field.includes('"')) throw new Error(`a quote in the middle of a field: ${field}`);
      at += field.length;
    }
    row.push(field);
    if (at >= text.length) {
      endRow();
    } else if (text[at] === ',') {
      at++;
      if (at === text.length) row.push('');
    } else {
      if (text[at] === '\r') at++;
      if (text[at] !== '\n') throw new Error(`"${text[at]}" after a field`);
      at++;
      endRow();
    }
  }
  if (row.length > 0) endRow();
  return rows;
}

/** Rows as records by the names of the first row; every row must have a field for each. */
export function parseRecords(text: string): Array<Record<string, string>> {
  const [header = [], ...rows] = parseCsv(text);
  return rows.map((row, i) => {
    if (row.length !== header.length) throw new Error(`row ${i + 2} has ${row.length} fields, not ${header.length}`);
    return Object.fromEntries(header.map((name, column) => [name, row[column] as string]));
  });
}
