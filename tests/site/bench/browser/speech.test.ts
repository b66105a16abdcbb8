import { afterEach, beforeEach, expect, test } from 'vitest';
import { speech } from '../../../../src/site/bench/browser/speech.ts';

let voices: Array<{ lang: string; localService: boolean }>;
let heard: string[];

beforeEach(() => {
  voices = [];
  heard = [];
  Object.assign(globalThis, {
    speechSynthesis: {
      getVoices: () => voices,
      speak: (it: { text: string; voice: unknown }) => heard.push(`${it.text} (${voices.indexOf(it.voice as never)})`),
      cancel: () => heard.push('-'),
    },
    SpeechSynthesisUtterance: class {
      readonly text: string;
      constructor(text: string) {
        this.text = text;
      }
    },
  });
});
afterEach(() => {
  for (const it of ['speechSynthesis', 'SpeechSynthesisUtterance']) Reflect.deleteProperty(globalThis, it);
});

test('says readings by a voice of the device, and breaks off what was being said', () => {
  const said = speech();
  expect(said.isThere()).toBe(false);
  // Voices come after the page.
  voices = [
    { lang: 'en-GB', localService: false },
    { lang: 'de-DE', localService: true },
    { lang: 'en-US', localService: true },
  ];
  expect(said.isThere()).toBe(true);
  said.sayReading('4.12 mW/cm2');
  said.quiet();
  expect(heard).toEqual(['-', 'four point one two milliwatts per square centimetre (2)', '-']);
});

test('says nothing by a voice that sends the text away', () => {
  voices = [{ lang: 'en-GB', localService: false }];
  const said = speech();
  said.sayReading('4.12 W');
  expect([said.isThere(), heard]).toEqual([false, []]);
});

test('does without speech', () => {
  Reflect.deleteProperty(globalThis, 'speechSynthesis');
  const said = speech();
  said.sayReading('4.12 W');
  said.quiet();
  expect(said.isThere()).toBe(false);
});
