import type { MethodId } from '../../measure/method-versions.ts';

/**
 * What a method does, in the one sentence that stands on its card. At most 85 characters: two lines beside the code of
 * a wide card.
 */
export const METHOD_SENTENCES: Readonly<Partial<Record<MethodId, string>>> = {
  'bench-procedure': 'Each panel is read on one bench, warm, at nine points of its field.',
  uncertainty: 'In about 95 of 100 such cases the true value lies on the line.',
  wavelength: 'Where a spectrum is highest, one peak for each kind of LED.',
  centroid: 'The balance point of a peak, which its tails pull away from its top.',
  'band-shares': 'How much of the light lies in each band of wavelengths.',
  'infrared-sum': 'All that lies beyond 780 nm, which nobody sees.',
  'peak-irradiance': 'The brightest spot that a slow sweep over the panel finds.',
  'mean-irradiance': 'The mean of nine points, the outer ones an inch inside the edges.',
  'sampling-bias': 'Nine points are not the whole field: how far their mean is from its mean.',
  uniformity: 'The lowest of nine points over their mean.',
  'peak-to-mean': 'How much brighter the brightest spot is than the mean.',
  'led-area': 'From the outer edge of the first LED to that of the last, both ways.',
  'size-class': 'Panels are ranked among those whose LEDs cover about as much.',
  'optical-power': 'The light that passes the frame, in watts: mean irradiance times area.',
  'price-per-watt': 'The price over the watts of light that pass the frame.',
  capture: 'The share of all the light that passes the frame.',
  'emitted-power': 'All the light: what passes the frame is read, the rest is worked out.',
  'price-per-emitted-watt': 'The price over all the watts of light that leave the LEDs.',
  'efficiency-emitted': 'All the light that leaves the LEDs, over the power from the mains.',
  'beam-half-angle': 'How far to the side the light is half as strong as straight ahead.',
  'distance-table': 'Farther away the light is weaker, though not by the square close to a panel.',
  'radiant-exposure': 'Strength times time: an amount, not a suggestion.',
  flicker: 'The swing over the sum of highest and lowest, in per cent.',
  'flicker-lines': 'How the flicker stands to published lines for its frequency: no verdict.',
  'infrared-eye': 'Infrared as a share of a published limit for the eye: no verdict.',
  'skin-heating': 'Light as a share of a published limit for heated skin: no verdict.',
  'field-levels': 'Fields as a share of published reference levels: no verdict.',
  'building-biology': 'Fields as multiples of a guideline’s lines for beds: no verdict.',
  'warm-up': 'How far light falls as the LEDs get warm, and how long that takes.',
  rank: 'Two panels tie where the interval of the ratio of their prices holds 1.',
  'step-up': 'What each watt more costs, from one panel to a larger one.',
  frontier: 'On the line lie the panels that no other beats on price and light both.',
};
