/** What a photo of the wall and sound clips say, on the page of a panel's files and on its own. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { imageSize } from 'image-size';
import { describe, expect, test } from 'vitest';
import { DEMO_SITE } from '../support/demo-folder.ts';
import { attribute, pageAt, textOf } from './site.ts';

const page = pageAt('/panels/quennick-tope/files/');
const files = page.document;
const own = pageAt('/panels/quennick-tope/').document;
const published = (address: string) => join(DEMO_SITE, decodeURIComponent(address));

describe('the lit wall', () => {
  const wall = files.querySelector('.wall');

  test('is told in a sentence, with what a camera is not', () => {
    expect(textOf(wall?.querySelector('p') ?? null)).toMatch(/^On 40 × 150 cm of wall, .* the dimmest place gets \d+/);
    expect(textOf(wall ?? null)).toContain('A camera is not a meter');
    expect(textOf(wall ?? null)).toContain('doesn’t see most near-infrared');
  });

  test('is shown straightened, beside a map of the same size', () => {
    const [photo, map] = ['<img src', '<image href'].map((it) => {
      const found = new RegExp(`${it}="([^"]*/wall/[^"]*)"[^>]* width="(\\d+)" height="(\\d+)"`).exec(page.html);
      return { address: found?.[1] ?? '', sides: found?.slice(2) };
    });
    const [photoSize, mapSize] = [photo, map].map((it) => imageSize(readFileSync(published(it?.address ?? ''))));
    expect(photoSize).toMatchObject({ type: 'jpg', height: 383 });
    expect(mapSize).toMatchObject({ type: 'png', width: photoSize?.width, height: photoSize?.height });
    expect((photoSize?.width ?? 0) / (photoSize?.height ?? 1)).toBeCloseTo(40 / 150, 1);
    expect(map?.sides).toEqual(photo?.sides);
  });

  test('has words for the map, in numbers', () => {
    const words = attribute(wall?.querySelector('.wall-pictures svg') ?? null, 'aria-label');
    expect(words).toMatch(/brightest .*, \d+ % of the mean; dimmest .*, \d+ %\. .*falls most from .* by \d+ %\.$/);
  });
});

describe('the sound clips', () => {
  const clips = files.querySelector('.clips');

  test('say first which tone is prominent, on both pages', () => {
    expect(textOf(clips?.querySelector('p') ?? null)).toMatch(/^A tone at 8\.2 kHz, prominent: 1\d\.\d dB above/);
    expect(textOf(own.querySelector('body'))).toContain('Tone at 8.2 kHz, prominent, by a sound clip.');
  });

  test('can be listened to, and lie in the output', () => {
    const all = [...(clips?.querySelectorAll('audio') ?? [])];
    expect(all).toHaveLength(2);
    for (const it of all) expect(existsSync(published(attribute(it, 'src')))).toBe(true);
  });

  test('have their spectrum as a drawing and as a table', () => {
    expect(attribute(clips?.querySelector('.plot svg') ?? null, 'aria-label')).toContain('tones: 8.2 kHz');
    expect(clips?.querySelectorAll('details table').length).toBe(2);
  });
});
