import { createHash } from 'node:crypto';

/** Stands for what a text says, however its lines are broken and whichever edition it calls itself. */
export function textMark(text: string): string {
  const plain = text
    .replace(/^\ufeff/, '')
    .replace(/^edition: .*$/m, '')
    .replace(/\s+/g, ' ')
    .trim();
  return createHash('sha256').update(plain).digest('hex').slice(0, 12);
}
