import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readContent } from '../../src/content/read/read-content.ts';
import { generateContent } from './generate-content.ts';
import { sessionTruth } from './simulate-panel.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'generated-content-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

describe('generateContent', () => {
  it('writes content without problems, over all size classes', () => {
    const panels = generateContent(folder, 41, 7);
    const { content, problems } = readContent({ folder, today: '2026-11-25' });
    expect(problems).toEqual([]);
    expect(content?.panels.size).toBe(41);
    const limits = content?.guide.data.sizeClasses ?? [];
    for (const { sizeClass, truth } of panels) {
      const area = truth.source.width * truth.source.height;
      expect(limits.find((it) => area <= (it.upToArea ?? Infinity))?.id).toBe(sizeClass);
    }
    expect(new Set(panels.map((it) => it.sizeClass)).size).toBe(limits.length);
  });

  it('reads half of the panels past their edges, in every size class, and says so by the version', () => {
    const panels = generateContent(folder, 40, 7);
    const { content } = readContent({ folder, today: '2026-11-25' });
    const session = (slug: string) => content?.panels.get(slug)?.data.sessions[0];
    const read = panels.filter(({ slug }) => session(slug)?.beyond);
    expect(read).toHaveLength(20);
    expect(new Set(read.map((it) => it.sizeClass)).size).toBe(content?.guide.data.sizeClasses.length);
    for (const { slug } of panels) expect(session(slug)?.methodVersion).toBe(session(slug)?.beyond ? 2 : 1);
  });

  it('draws panels that could be', () => {
    for (const { truth, bench, distance } of generateContent(folder, 16, 3)) {
      const { lightShare, capture } = sessionTruth(truth, bench, distance);
      expect(lightShare).toBeGreaterThan(0.3);
      expect(lightShare).toBeLessThan(0.55);
      expect(capture).toBeGreaterThan(0.1);
      expect(capture).toBeLessThan(0.95);
    }
  });

  it('writes the same bytes for the same seed, and others for another', () => {
    const written = (seed: number, name: string) => {
      generateContent(join(folder, name), 2, seed);
      return readFileSync(join(folder, name, 'panels/panel-00002/index.md'), 'utf8');
    };
    expect(written(5, 'a')).toBe(written(5, 'b'));
    expect(written(6, 'c')).not.toBe(written(5, 'd'));
  });

  it('never writes over a folder that holds something', () => {
    generateContent(folder, 1, 1);
    expect(() => generateContent(folder, 1, 1)).toThrow(/is not empty/);
  });
});
