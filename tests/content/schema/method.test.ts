import { expect, test } from 'vitest';
import { methodSchema } from '../../../src/content/schema/method.ts';

test('what is printed as it stands has the quotes that Markdown makes, and keeps its other marks', () => {
  const read = methodSchema.parse({
    summary: "The panel's own field, and what the meter can't see.",
    goodFor: ["A tester's eye"],
    hides: ["5' of arc, 'quoted' and the meters' band"],
    sources: [{ text: "The maker's sheet", standing: 'read' }],
    versions: [{ version: 1, date: '2026-01-02', change: "It didn't move." }],
  });
  expect(read).toMatchObject({
    summary: 'The panel’s own field, and what the meter can’t see.',
    goodFor: ['A tester’s eye'],
    hides: ["5' of arc, ‘quoted’ and the meters’ band"],
    sources: [{ text: 'The maker’s sheet' }],
    versions: [{ change: 'It didn’t move.' }],
  });
});
