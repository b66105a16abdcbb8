import type { LimitResult } from '../../measure/exposure/index.ts';
import type { PanelCaution } from '../caution-words.ts';

/** What figures are held against limits for. */
export type Hazard = LimitResult['hazard'];

/** Where on the page of cautions each hazard is told of. */
export const HAZARD_CAUTIONS: Readonly<Record<Hazard, PanelCaution | 'sound'>> = {
  'infrared-share': 'eyes',
  'infrared-time': 'eyes',
  retina: 'eyes',
  skin: 'skin-and-heat',
  flicker: 'flicker',
  pulsing: 'flicker',
  field: 'implants-and-fields',
  precaution: 'implants-and-fields',
  sound: 'sound',
};
