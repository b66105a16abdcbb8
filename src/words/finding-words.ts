import type { Statement } from '../measure/statement.ts';
import { capital, hertzWords } from './limits/amounts.ts';
import { rounded } from './rounded.ts';
import { say } from './say.ts';
import { nmText } from './spectrum-words.ts';
import { timeWords } from './time-words.ts';

/** What a meter's file has brought to light, in few words, without its full stop; what has none of its own, as it is said elsewhere. */
export function findingInShort(it: Statement): string {
  return capital(inWords(it));
}

function inWords(it: Statement): string {
  switch (it.code) {
    case 'peak-not-claimed':
      return `a peak at ${nmText(it.wavelength)} that the maker does not name${it.share === undefined ? '' : `, ${rounded(it.share, 2)} % of the light`}`;
    case 'claimed-wavelength-missing':
      return `no peak at the claimed ${nmText(it.claimed)}`;
    case 'claimed-share-apart':
      return `${rounded(it.share, 2)} % of the light at ${nmText(it.claimed)}, where ${rounded(it.claimedShare, 2)} % is claimed`;
    case 'grid-before-settled':
      return `readings begun ${timeWords(it.warmUp)} after switching on, with the light still ${rounded(Math.abs(it.excess), 2)} % ${it.excess > 0 ? 'above' : 'below'} where it settled`;
    case 'sweep-spike':
      return `${it.count === 1 ? 'a spike' : `${it.count} spikes`} of one sample in the sweep, left aside`;
    case 'tone-prominent':
      return `a tone at ${hertzWords(Number(it.frequency.toPrecision(2)))}, prominent, which one number in dB(A) hides`;
    default:
      return say(it).replace(/\.$/, '');
  }
}
