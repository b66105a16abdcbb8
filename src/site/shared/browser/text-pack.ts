/** Texts of which each mostly begins as the one before: as such, or as how many characters it has from there, and the rest. */
export type PackedTexts = Array<string | [alike: number, rest: string]>;

/** Fewer characters are not worth a number. */
const WORTH = 12;

export function packTexts(texts: readonly string[]): PackedTexts {
  return texts.map((text, i) => {
    const before = texts[i - 1] ?? '';
    let alike = 0;
    while (alike < text.length && text[alike] === before[alike]) alike++;
    return alike < WORTH ? text : [alike, text.slice(alike)];
  });
}

export function unpackTexts(packed: PackedTexts): string[] {
  const texts: string[] = [];
  for (const it of packed) texts.push(typeof it === 'string' ? it : (texts.at(-1) ?? '').slice(0, it[0]) + it[1]);
  return texts;
}
