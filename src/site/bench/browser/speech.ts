/** Reads numbers back aloud, by a voice of this device alone: some browsers have voices that send the text away. */
import { spokenReading } from '../../../words/spoken.ts';

export interface Speech {
  /** Whether this device has an English voice of its own. Voices come some time after the page. */
  isThere(): boolean;
  /** Says a reading as it was written, `41.2 mW/cm2`; what was being said before is broken off. */
  sayReading(written: string): void;
  /** Says a short text. */
  say(text: string): void;
  quiet(): void;
}

/** Speech of this browser; says nothing where there is none. */
export function speech(): Speech {
  const engine = 'speechSynthesis' in globalThis ? globalThis.speechSynthesis : undefined;
  const voice = () => engine?.getVoices().find((it) => it.localService && /^en\b/i.test(it.lang));
  // Asked for once, so that they are there when they are wanted.
  engine?.getVoices();
  const say = (text: string) => {
    const own = voice();
    if (!engine || !own) return;
    engine.cancel();
    const said = new SpeechSynthesisUtterance(text);
    said.voice = own;
    said.lang = own.lang;
    engine.speak(said);
  };
  return {
    isThere: () => voice() !== undefined,
    sayReading: (written) => say(spokenReading(written)),
    say,
    quiet: () => engine?.cancel(),
  };
}
