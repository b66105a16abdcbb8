/** The cautions of a planned session, as elements of the page; they stand whatever could be reckoned. */
import { CLOSING } from '../../../measure/exposure/limit.ts';
import { roundedTo, SPECTRAL_UNKNOWN, timeWords } from '../../../measure/exposure/words.ts';
import {
  CAUTION_WORDS,
  cautionAddress,
  cautionText,
  MORE_CAUTIONS,
  PANEL_CAUTIONS,
} from '../../../words/caution-words.ts';
import { fixed } from '../../../words/format.ts';
import { html } from '../../shared/browser/dom.ts';
import type { EyeShare, Ranged } from './plan-calculation.ts';
import type { PlanPanel } from './plan-panel.ts';

const limitTime = (seconds: number) => timeWords(roundedTo(seconds, 'low'));
const link = (href: string, text: string) => html('a', { href }, text);

/** Where the time is longer than that after which the infrared limit would be used up: so, or at its upper end only. */
export function longerWords({ value, high = value }: Ranged, eye: EyeShare): string | undefined {
  const seconds = 'unknown' in eye ? eye.secondsFartherAway : eye.cautiousSeconds;
  if (seconds === undefined || high <= seconds) return undefined;
  const which = value > seconds ? 'This is longer' : 'At the upper end of its interval this is longer';
  return 'unknown' in eye
    ? `${which} than the time after which the infrared limit for the eye would be used up where near-infrared was read, which is farther away.`
    : `${which} than the ${limitTime(seconds)} after which the infrared limit for the eye ${eye.there.kind === 'range' ? 'may' : 'would'} be used up, looking towards the panel.`;
}

/** What reaches an eye at a distance, in a sentence. */
export function eyeWords(panel: PlanPanel, cm: number, eye: EyeShare): string {
  if ('unknown' in eye) return `What near-infrared reaches an eye at ${cm} cm: ${eye.unknown}.`;
  const { there, cautious, cautiousSeconds } = eye;
  const start = `Looking towards the panel from ${cm} cm, near-infrared alone gives`;
  const limit = 'of the limit for long exposures, 100 W/m² (IEC 62471:2006, 4.3.7, seen in secondary sources only)';
  const digits = (value: number) => fixed(value, value < 100 ? 1 : 0);
  const high = digits(roundedTo(cautious, 'high'));
  const share =
    there.kind === 'range'
      ? `${start} somewhere from ${digits(roundedTo(there.low, 'low'))} % to ${high} % ${limit}: it was not read there.`
      : `${start} ${digits(there.reading.value)} % ${limit}; ${
          there.reading.high === there.reading.value
            ? 'the value itself is used, for its uncertainty is not known'
            : `at the cautious end of the interval ${high} %`
        }.`;
  const time = Number.isFinite(cautiousSeconds)
    ? `At the cautious end, the limit would be used up after ${limitTime(cautiousSeconds)}.`
    : 'At the cautious end, it lies no higher than that limit, up to which the standard limits no time.';
  const isKnown = 'isErrorKnown' in panel.infrared && panel.infrared.isErrorKnown;
  return [share, time, isKnown ? '' : SPECTRAL_UNKNOWN].filter(Boolean).join(' ');
}

/** All cautions of a panel, the eyes' with what reaches one at the planned distance and its mark; `longer` stands out. */
export function cautionNotice(
  panel: PlanPanel,
  eye?: string,
  longer?: string,
  marks: readonly HTMLElement[] = [],
): HTMLElement {
  const items = PANEL_CAUTIONS.flatMap((anchor) => {
    const said = panel.cautions[anchor];
    if (said === undefined) return [];
    const text = cautionText(anchor, (anchor === 'eyes' ? eye : undefined) ?? said ?? undefined);
    const isEyes = anchor === 'eyes';
    return [
      html(
        'div',
        {},
        html('dt', {}, link(cautionAddress(anchor), CAUTION_WORDS[anchor].title)),
        html(
          'dd',
          {},
          isEyes && longer !== undefined && html('strong', {}, `${longer.replace(/^This/, 'The planned time')} `),
          text,
          ...(isEyes ? marks : []),
        ),
      ),
    ];
  });
  return html(
    'aside',
    { class: 'notice wide', 'aria-labelledby': 'plan-cautions' },
    html('h3', { id: 'plan-cautions' }, 'Cautions'),
    html('dl', {}, ...items),
    html(
      'p',
      { class: 'small' },
      'Also ',
      ...MORE_CAUTIONS.flatMap(([anchor, name]) => [link(cautionAddress(anchor), name), ', ']),
      link('/cautions/', 'all cautions'),
      '. ',
      link('/methods/infrared-eye/', 'How the share for the eye is worked out'),
      `. ${CLOSING}`,
    ),
  );
}
