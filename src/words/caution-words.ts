/** Cautions as they stand beside figures: what a panel's readings say first, then what to do. No DOM, no ledger. */

/** Anchors of the cautions that every panel has, in the order in which they are shown. */
export const PANEL_CAUTIONS = ['eyes', 'skin-and-heat', 'mains-electricity', 'implants-and-fields', 'flicker'] as const;
export type PanelCaution = (typeof PANEL_CAUTIONS)[number];

interface CautionWords {
  title: string;
  /** Statement of what could not be read off the panel: a missing reading takes no caution away. */
  notRead: string;
  advice: string;
}

/** The words of each caution, once for all pages. */
export const CAUTION_WORDS: Readonly<Record<PanelCaution, CautionWords>> = {
  eyes: {
    title: 'Eyes',
    notRead: 'How strong the light is was not read.',
    advice:
      'Don’t look into the LEDs; closed lids are no shield. Wear eye protection of stated attenuation at these wavelengths; others prove nothing.',
  },
  'skin-and-heat': {
    title: 'Skin',
    notRead: 'How strong the light is was not read, nor how hot the housing gets.',
    advice:
      'Step back at once where it feels hot; numb skin, painkillers and alcohol silence that warning. Don’t touch, cover or lie on it.',
  },
  'mains-electricity': {
    title: 'Mains',
    notRead: 'The mains draw was not read.',
    advice:
      'Keep it from water, and on an earthed outlet where its plug has an earth. Hang it as its maker says; its inside is for licensed people; local codes decide where it may be fixed.',
  },
  'implants-and-fields': {
    title: 'Implants',
    notRead: 'The magnetic field was not read.',
    advice: 'With a pacemaker or another active implant, ask its clinic and keep the distance that they name.',
  },
  flicker: {
    title: 'Flicker',
    notRead: 'Flicker was not read.',
    advice: 'If flicker troubles you, or has brought on seizures or migraine, ask a physician first.',
  },
};

/** What of the page of cautions no reading shows; linked to wherever cautions stand. */
export const MORE_CAUTIONS = [
  ['ask-a-doctor-first', 'ask a doctor first'],
  ['medicines-and-conditions-that-sensitise', 'medicines that sensitise'],
  ['children-and-pets', 'children and pets'],
  ['several-panels-at-once', 'several panels at once'],
] as const;

/** Address of a caution on its page. */
export const cautionAddress = (anchor: string) => `/cautions/#${anchor}`;

/** A caution's text: what was read, or that it was not, and what to do. */
export function cautionText(anchor: PanelCaution, said: string | undefined): string {
  const { notRead, advice } = CAUTION_WORDS[anchor];
  return `${said ?? notRead} ${advice}`;
}
