/** What a meter on a cable, its lines and the tester's pattern come to, in words. No DOM. */
import type { MeterFeedError } from '../meter-feed.ts';
import type { LineRefusal } from '../meter-line.ts';
import type { PatternFault } from '../meter-pattern.ts';

export function feedWords({ fault, message }: MeterFeedError): string {
  switch (fault) {
    case 'not-there':
      return 'This browser has no way to a meter on a cable.';
    case 'none-chosen':
      return 'No meter was chosen.';
    case 'busy':
      return 'Another program or window has the meter, or it does not answer.';
    case 'unplugged':
      return 'The meter was unplugged.';
    case 'refused':
      return 'The browser or the system does not let the page read it.';
    case 'failed':
      return `It could not be read (${message}).`;
  }
}

export function refusalWords(it: LineRefusal): string {
  switch (it.refused) {
    case 'empty':
      return 'An empty line.';
    case 'long':
      return 'The line is longer than any meter’s.';
    case 'no-number':
      return 'There is no number in it.';
    case 'no-match':
      return 'The pattern is not in it.';
    case 'overload':
      return `The meter shows “${it.text}”: more than it can read.`;
    case 'no-value':
      return `The meter shows “${it.text}”: nothing to read.`;
    case 'unclear':
      return `“${it.text}” could be read in two ways.`;
  }
}

export function patternWords(it: PatternFault): string {
  switch (it.fault) {
    case 'empty':
      return '';
    case 'no-number':
      return 'It says nowhere where the number is: write {number} there.';
    case 'long':
      return 'The pattern is too long.';
    case 'twice':
      return `${it.place} stands in it twice.`;
    case 'place':
      return `${it.place} is none of {number}, {unit} and {any}.`;
    case 'expression':
      return `The browser can’t read the expression: ${it.why}`;
  }
}
