import type { LimitResult } from '../../measure/exposure/index.ts';
import { fieldWords } from './fields.ts';
import { flickerWords } from './flicker.ts';
import { infraredShareWords, infraredTimeWords } from './infrared.ts';
import { precautionWords } from './precaution.ts';
import { pulsingWords } from './pulsing.ts';
import { retinaWords } from './retina.ts';
import { skinWords } from './skin.ts';
import { soundWords } from './sound.ts';
import type { LimitWords } from './wording.ts';

/** A figure held against a published limit, in words. */
export function limitWords(result: LimitResult): LimitWords {
  switch (result.hazard) {
    case 'infrared-share':
      return infraredShareWords(result);
    case 'infrared-time':
      return infraredTimeWords(result);
    case 'skin':
      return skinWords(result);
    case 'retina':
      return retinaWords(result);
    case 'flicker':
      return flickerWords(result);
    case 'pulsing':
      return pulsingWords(result);
    case 'field':
      return fieldWords(result);
    case 'precaution':
      return precautionWords(result);
    case 'sound':
      return soundWords(result);
  }
}
