import type { SoundClipsView } from '../../ledger/files/sound-clips.ts';
import { TONES_FROM } from '../../measure/sound/critical-band.ts';
import { fixed } from '../../words/format.ts';

/** `8.2 kHz`, `410 Hz`: two digits, as nobody hears more. */
export function toneText(frequency: number): string {
  const rounded = Number(frequency.toPrecision(2));
  return rounded >= 1000 ? `${rounded / 1000} kHz` : `${rounded} Hz`;
}

/** What of tones there is to tell, in a sentence or two. */
export function toneAnswer({ tones, clearest, whyNoTones, upTo = 0, hasRoom }: SoundClipsView): string {
  if (!tones) {
    return whyNoTones === 'clipped'
      ? 'The clip is overdriven, so that tones can’t be told.'
      : 'The clip is too short to tell tones.';
  }
  const searched = `from ${toneText(TONES_FROM)} to ${toneText(upTo)}`;
  if (!clearest) return `No tone of the panel’s stands out ${searched}.`;
  const { frequency, ratio, criterion, isProminent } = clearest;
  const room = hasRoom ? '' : ' The room was not recorded, so it may be the room’s.';
  const stands = `${fixed(ratio, 1)} dB above the noise about it`;
  if (!isProminent) {
    return `No prominent tone ${searched}. The clearest, at ${toneText(frequency)}, stands ${stands}; it would be prominent from ${fixed(criterion, 1)} dB on.${room}`;
  }
  const others = tones
    .filter((it) => it.isProminent && !it.isOfRoom && !it.isBelowHearing && it !== clearest)
    .map((it) => toneText(it.frequency));
  return `A tone at ${toneText(frequency)}, prominent: ${stands}; from ${fixed(criterion, 1)} dB on a tone is called so.${others.length > 0 ? ` Prominent too: ${others.join(', ')}.` : ''}${room}`;
}

/** The same for a line of the panel's page; undefined where tones can't be told. */
export function soundInShort({ tones, clearest, upTo = 0 }: SoundClipsView): string | undefined {
  if (!tones) return undefined;
  return clearest?.isProminent
    ? `Tone at ${toneText(clearest.frequency)}, prominent`
    : `No prominent tone up to ${toneText(upTo)}`;
}
