import type { Terminal } from './terminal.ts';

/**
 * Asks whether to write; only a yes is one.
 *
 * @returns false where it was no, or where there is nobody to ask, which has been said
 */
export async function agreedTo(question: string, { ask, complain }: Terminal): Promise<boolean> {
  if (ask && /^y(es)?$/i.test(await ask(`\n${question} [y/N] `))) return true;
  complain(ask ? 'Nothing was written.' : '\nNothing was written. To write it, add --yes.');
  return false;
}
