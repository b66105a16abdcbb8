/**
 * Words that readers bring with them, and the page that is about what they mean, though it may not have the word. By
 * hand: a sentence each, which promises nothing and calls nothing safe.
 */
export interface MeantPage {
  /** Where it is told. */
  address: string;
  title: string;
  says: string;
}

/** Words in small letters; several that stand together are one. */
const PAGES: ReadonlyArray<MeantPage & { words: string }> = [
  {
    words: 'lumen, lumens, lux, luminous, bright, brightness, candela',
    address: '/methods/optical-power/',
    title: 'Light in watts',
    says: 'Lumen and lux weigh light for the eye, which sees nothing of near-infrared: here light is in watts.',
  },
  {
    words: 'dose, doses, dosage, fluence, joule, joules, j/cm2, j/cm², exposure, session length',
    address: '/methods/radiant-exposure/',
    title: 'Light over time, in J/cm²',
    says: 'What falls on a square centimetre in a session, by distance and time. It is arithmetic: none is advised.',
  },
  {
    words: 'minutes, session, how long',
    address: '/plan/',
    title: 'Plan a session',
    says: 'Minutes at a distance and a J/cm² of your own, and what of your eyes. None is advised.',
  },
  {
    words:
      'safe, safer, safely, safety, unsafe, danger, dangers, dangerous, harm, harmful, hazard, hazards, risk, risks',
    address: '/cautions/',
    title: 'Cautions',
    says: 'A guide can’t tell what is safe for you: what to look out for, what to do, and whom to ask.',
  },
  {
    words: 'emf, emfs, emr, electrosmog, gauss, milligauss, tesla, microtesla, radiation, magnetic, electric, radio',
    address: '/methods/field-levels/',
    title: 'Electric, magnetic and radio fields',
    says: 'Read with the panel off, then on, and set beside published levels.',
  },
  {
    words:
      'glasses, goggles, sunglasses, eyewear, eye protection, eye, eyes, eyesight, blind, blindness, retina, cataract',
    address: '/cautions/#eyes',
    title: 'Cautions: eyes',
    says: 'Near-infrared can’t be seen, so nobody turns away from it: what eye protection has to state.',
  },
  {
    words:
      'seasonal, sad, winter, depression, mood, lightbox, treat, treatment, therapy, benefit, benefits, heal, healing, effect, effects, pain, wrinkles, hair',
    address: '/cautions/#not-medical-advice',
    title: 'Cautions: not medical advice',
    says: 'What comes out of a panel is measured here. What it does for anybody is not.',
  },
  {
    words: 'pwm, pulse, pulses, pulsed, pulsing, strobe, blinking, hertz, hz, modulation, dimming',
    address: '/methods/flicker/',
    title: 'Flicker',
    says: 'How deeply the light rises and falls, and how many times a second.',
  },
  {
    words: 'decibel, decibels, db, dba, db(a), noise, noisy, loud, loudness, quiet, silent, fan, fans, hum',
    address: '/methods/sound-of-panel/',
    title: 'Sound',
    says: 'The panel alone, in dB(A), once the sound of the room has been taken off.',
  },
  {
    words: 'watt, watts, wattage, power, consumption',
    address: '/methods/mains-draw/',
    title: 'Watts from the wall',
    says: 'What a panel takes from the socket. Only a part of it becomes light, and that is what a watt of light is.',
  },
  {
    words: 'electricity, bill, kwh, tariff, running',
    address: '/methods/running-cost/',
    title: 'What an hour costs',
    says: 'The electricity for an hour with both channels on.',
  },
  {
    words: 'beam, beams, angle, lens, lenses, spread, degrees, optics',
    address: '/methods/beam-half-angle/',
    title: 'How wide the beams are',
    says: 'Wide beams lose more light past the frame: what the readings tell of them.',
  },
  {
    words: 'intensity, strength, strong, strongest, mw/cm2, mw/cm², power density',
    address: '/methods/mean-irradiance/',
    title: 'Strength of the light',
    says: 'Light on each square centimetre, in mW/cm²: a mean of readings, not the highest one.',
  },
  {
    words: 'nanometre, nanometres, nanometer, nm, colour, color, spectrum, 630, 660, 810, 830, 850',
    address: '/methods/wavelength/',
    title: 'Wavelengths',
    says: 'What each channel gives, by a spectrometer, beside what the maker says.',
  },
  {
    words: 'heat, hot, burn, burns, burning, warm, skin',
    address: '/cautions/#skin-and-heat',
    title: 'Cautions: skin and heat',
    says: 'The light warms: step back or switch off as soon as it feels hot.',
  },
  {
    words: 'pacemaker, pacemakers, implant, implants, defibrillator, insulin pump',
    address: '/cautions/#implants-and-fields',
    title: 'Cautions: implants and fields',
    says: 'Ask the clinic or the implant’s maker first, and keep the distance that they name.',
  },
  {
    words:
      'doctor, pregnant, pregnancy, cancer, epilepsy, migraine, thyroid, medicine, medicines, medication, drug, drugs, photosensitive, child, children, baby, pets, dog, cat',
    address: '/cautions/#ask-a-doctor-first',
    title: 'Cautions: ask a doctor first',
    says: 'Who should ask before, and what to ask about.',
  },
  {
    words: 'best, top, better, recommend, recommended, recommendation, winner, cheapest, cheap, value',
    address: '/',
    title: 'The guide',
    says: 'No panel is called the best one: what a watt of light costs in each size, and which are a tie.',
  },
  {
    words: 'affiliate, sponsor, sponsored, commission, coupon, discount, code, paid, advert, ads',
    address: '/#disclosure',
    title: 'Who pays for this',
    says: 'By whose money panels come, and what the publisher earns by links or codes.',
  },
  {
    words: 'accuracy, accurate, error, errors, precision, tolerance, margin, ±, plus-minus, confidence',
    address: '/methods/uncertainty/',
    title: 'How sure a figure is',
    says: 'What stands behind ±, and what is in it.',
  },
];

/** At most so many are shown; more would be a list of their own. */
const MOST = 3;

/** The pages that a query may mean by the reader's own words, in the order of the words. */
export function meantPages(query: string): MeantPage[] {
  const asked = query
    .toLowerCase()
    .replaceAll(/[?!.,;:“”"]+/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
  const words = asked.split(' ');
  const placed = PAGES.flatMap(({ words: list, ...page }) => {
    const at = list.split(', ').flatMap((it) => placesOf(it, asked, words));
    return at.length > 0 ? [{ page, at: Math.min(...at) }] : [];
  });
  return placed
    .toSorted((a, b) => a.at - b.at)
    .slice(0, MOST)
    .map((it) => it.page);
}

/** Every page of the list, each once. */
export const MEANT_PAGES: readonly MeantPage[] = PAGES;

function placesOf(wanted: string, asked: string, words: readonly string[]): number[] {
  if (wanted.includes(' '))
    return ` ${asked} `.includes(` ${wanted} `) ? [words.indexOf(wanted.split(' ')[0] ?? '')] : [];
  const at = words.indexOf(wanted);
  return at < 0 ? [] : [at];
}
