import type { LimitId } from '../../measure/exposure/limit.ts';
import { type Citation, directive, IEC_62471, INFRARED_EYE } from './citation.ts';

const IEEE_1789 = { source: 'IEEE Std 1789', year: 2015, edition: '2015 edition' } as const;
const ICNIRP_2010 = { source: 'ICNIRP', year: 2010, edition: 'Health Physics 99(6):818–836' } as const;
const ICNIRP_2020 = { source: 'ICNIRP', year: 2020, edition: 'Health Physics 118(5):483–524' } as const;

/** Every limit that figures are held against or corrected by. */
export const CITATIONS: Readonly<Record<LimitId, Citation>> = {
  'infrared-eye': INFRARED_EYE,
  'skin-heating': {
    name: 'thermal limit for the skin',
    ...IEC_62471,
    clause: '4.3.8',
    standing: 'secondary',
    alsoIn: directive('formula'),
  },
  retina: {
    name: 'thermal limits for the retina',
    ...IEC_62471,
    clause: '4.3.5–4.3.6',
    standing: 'memory',
  },
  'flicker-low-risk': {
    name: 'low-risk line (Practice 1)',
    ...IEEE_1789,
    clause: '8.1.1',
    standing: 'secondary',
  },
  'flicker-no-effect': {
    name: 'no-observable-effect line (Practice 2)',
    ...IEEE_1789,
    clause: '8.1.1',
    standing: 'secondary',
  },
  'flicker-seizures': { name: 'rule against seizures (Practice 3)', ...IEEE_1789, standing: 'memory' },
  'magnetic-level': { name: 'reference level for magnetic fields, general public,', ...ICNIRP_2010, standing: 'read' },
  'electric-level': { name: 'reference level for electric fields, general public,', ...ICNIRP_2010, standing: 'read' },
  'radio-level': {
    name: 'whole-body reference level for radio fields, general public,',
    ...ICNIRP_2020,
    standing: 'secondary',
  },
  'sleeping-places': {
    name: 'ranges for sleeping places',
    source: 'the Standard of Building Biology Testing Methods',
    year: 2015,
    edition: 'SBM-2015 with the numbers seen for SBM-2008',
    standing: 'memory',
  },
  'background-sound': {
    name: 'correction for background sound, equation 16,',
    source: 'ISO 3744',
    year: 2010,
    edition: '2010 edition',
    standing: 'secondary',
  },
};
