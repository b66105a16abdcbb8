import { speaker } from './speaker.ts';
import { DIFFERENCE_WORDS } from './statements/difference.ts';
import { GENERAL_WORDS } from './statements/general.ts';

/** What a comparison of packed figures may say: the words of a page's script, which has not those for all the rest. */
export const sayDifference = speaker({ ...GENERAL_WORDS, ...DIFFERENCE_WORDS });
