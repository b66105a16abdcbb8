import type { Statement, StatementCode } from '../measure/statement.ts';
import { speaker, type WordsOf } from './speaker.ts';
import { beamWords } from './statements/beam.ts';
import { benchWords } from './statements/bench.ts';
import { FINDING_WORDS, HINT_WORDS } from './statements/checks.ts';
import { CLAIM_WORDS } from './statements/claims.ts';
import { DIFFERENCE_WORDS } from './statements/difference.ts';
import { exposureWords } from './statements/exposure.ts';
import { FILE_WORDS } from './statements/files.ts';
import { GENERAL_WORDS } from './statements/general.ts';
import { INSTRUMENT_WORDS } from './statements/instrument.ts';
import { IRRADIANCE_WORDS } from './statements/irradiance.ts';
import { ledgerWords } from './statements/ledger.ts';
import { logWords } from './statements/logs.ts';
import { MONEY_WORDS } from './statements/money.ts';
import { PICTURE_WORDS } from './statements/picture.ts';
import { SOUND_WORDS } from './statements/sound.ts';
import { spectrumWords } from './statements/spectrum.ts';

/** Statements hold others: what is said of them is said in the same words. */
const within = (it: Statement): string => say(it);

/** Every code that the calculation may yield: one that has no words here does not pass the types. */
const WORDS: WordsOf<StatementCode> = {
  ...GENERAL_WORDS,
  ...DIFFERENCE_WORDS,
  ...INSTRUMENT_WORDS,
  ...IRRADIANCE_WORDS,
  ...MONEY_WORDS,
  ...CLAIM_WORDS,
  ...spectrumWords(within),
  ...FINDING_WORDS,
  ...HINT_WORDS,
  ...FILE_WORDS,
  ...PICTURE_WORDS,
  ...SOUND_WORDS,
  ...ledgerWords(within),
  ...logWords(within),
  ...beamWords(within),
  ...benchWords(within),
  ...exposureWords(within),
};

/** A statement of the calculation in words, within a sentence, without a full stop. */
export const say = speaker(WORDS);

/** A figure's equation with its numbers put in: notation as it is, and words where it needs some. */
export function equationText(it: string | Statement): string {
  return typeof it === 'string' ? it : say(it);
}
