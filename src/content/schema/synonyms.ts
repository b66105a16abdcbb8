import { ownField } from './block.ts';

/**
 * Other names that people give to fields; each leads to the fields that may be meant, of which the one counts that the
 * block has. Words that are near a field's name need none: the nearest is offered anyway.
 */
const SYNONYMS: Readonly<Record<string, readonly string[]>> = {
  sweep: ['distances', 'light'],
  distancesweep: ['distances'],
  peak: ['light'],
  grid: ['light'],
  distances: ['light'],
  beyond: ['light'],
  irradiance: ['light'],
  points: ['rows', 'grid'],
  readings: ['rows', 'grid'],
  ninepoint: ['grid'],
  edges: ['beyond'],
  outside: ['beyond'],
  pastedges: ['beyond'],
  brand: ['maker'],
  manufacturer: ['maker'],
  name: ['model'],
  state: ['status'],
  reason: ['statusReason', 'struck'],
  summary: ['verdict'],
  source: ['obtained'],
  area: ['field'],
  ledarea: ['field'],
  ledfield: ['field'],
  size: ['field'],
  dimensions: ['housing', 'field'],
  case: ['housing'],
  mass: ['weight'],
  tests: ['sessions'],
  offers: ['prices'],
  cost: ['paid'],
  amount: ['paid'],
  rrp: ['list'],
  msrp: ['list'],
  discount: ['discountCode'],
  coupon: ['discountCode'],
  url: ['link', 'website'],
  affiliate: ['paidLink', 'testerEarns'],
  meters: ['instruments'],
  warmuptime: ['warmUp'],
  temperature: ['roomTemperature'],
  temp: ['roomTemperature'],
  ambient: ['roomTemperature', 'off'],
  background: ['off'],
  room: ['roomTemperature', 'off'],
  nir: ['nearInfrared'],
  ir: ['nearInfrared'],
  infrared: ['nearInfrared'],
  both: ['combined'],
  all: ['combined'],
  total: ['combined'],
  draw: ['mains'],
  watts: ['mains', 'power'],
  consumption: ['mains', 'power'],
  emf: ['magnetic'],
  gauss: ['magnetic'],
  rf: ['radio'],
  noise: ['sound'],
  loudness: ['sound'],
  hz: ['frequency'],
  depth: ['percent'],
  modulation: ['percent'],
  spectrum: ['wavelengths'],
  spectra: ['wavelengths'],
  nm: ['peak'],
  middle: ['centre'],
  center: ['centre'],
  axis: ['centre'],
  angle: ['beamAngle'],
  leds: ['ledCount'],
  comment: ['notes', 'note'],
  comments: ['notes', 'note'],
  remarks: ['notes', 'note'],
  accuracy: ['relative', 'absolute'],
  uncertainty: ['relative', 'absolute'],
  cols: ['columns'],
};

/** All fields that a synonym leads to, for the check that each of them exists. */
export const MEANT_FIELDS: ReadonlySet<string> = new Set(Object.values(SYNONYMS).flat());

/** The field that is meant by another name for it, of those that may stand here. */
export function synonymOf(word: string, known: readonly string[]): string | undefined {
  const plain = word.toLowerCase().replace(/[\s_-]/g, '');
  const same = known.find((it) => it.toLowerCase() === plain);
  return same ?? ownField(SYNONYMS, plain)?.find((it) => known.includes(it));
}
