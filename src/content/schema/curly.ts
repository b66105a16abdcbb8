/** Quotes that a tester types straight, as they are printed; code between backticks stays as it is. */
export function curly(text: string): string {
  if (!/['"]/.test(text)) return text;
  return text
    .split(/(`[^`]*`)/)
    .map((part, i) => (i % 2 === 1 ? part : curled(part)))
    .join('');
}

const OPENS = /[\s([{‘“–—/-]/;

function curled(text: string): string {
  const isOpen = { '"': false, "'": false };
  return text.replace(/["']/g, (sign, at: number) => {
    const mark = sign as '"' | "'";
    const [before = ' ', after = ' '] = [text[at - 1], text[at + 1]];
    // 6" and 3' are lengths, unless something is to be closed.
    if (/\d/.test(before) && !isOpen[mark] && !/\p{L}/u.test(after)) return mark;
    // ’90s has lost its beginning, and begins nothing.
    const begins = OPENS.test(before) && !/\s/.test(after) && !(mark === "'" && /^\d\ds?\b/.test(text.slice(at + 1)));
    isOpen[mark] = begins;
    if (mark === '"') return begins ? '“' : '”';
    return begins ? '‘' : '’';
  });
}
