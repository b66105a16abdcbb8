import {
  CALCULATION,
  FILES_PAGES,
  MOST_CALCULATION,
  MOST_DATA,
  MOST_FILES_PAGE,
  MOST_OUTPUT,
  outputParts,
} from '../support/output-parts.ts';
import type { Line, Section } from './report.ts';

const MB = 1_000_000;
const KB = 1000;
const OUTPUT_PANELS = 1000;

/** How large the whole output is, and what it is made of. */
export function outputWeight(site: string, panels: number): Section {
  const parts = outputParts(site);
  const bytesOf = (name: string) => parts.find((it) => it.name === name)?.bytes ?? 0;
  const heaviestOf = (name: string) => (parts.find((it) => it.name === name)?.heaviest ?? 0) / KB;
  const [heaviest, fullest] = [heaviestOf(CALCULATION), heaviestOf(FILES_PAGES)];
  const total = parts.reduce((sum, it) => sum + it.bytes, 0);
  const most = (MOST_OUTPUT * panels) / OUTPUT_PANELS;
  const data = bytesOf('panels.json') / KB / panels;
  const lines: Line[] = parts
    .filter((it) => it.bytes > 0)
    .map(({ name, bytes, growsWithPanels }) => ({
      what: `  ${name}`,
      measured: `${(bytes / MB).toFixed(1)} MB`,
      against: growsWithPanels ? `${(bytes / KB / panels).toFixed(1)} KB a panel` : 'however many panels',
    }));
  return {
    title: `Output, ${panels} panels`,
    lines: [
      {
        what: 'whole output',
        measured: `${(total / MB).toFixed(1)} MB`,
        against: `${(total / KB / panels).toFixed(1)} KB a panel`,
        ratio: total / MB / most,
        // A small guide has what all guides have in common too.
        ...(panels >= OUTPUT_PANELS && { budget: `${most} MB`, isWithin: total / MB <= most }),
      },
      ...lines,
      {
        what: 'panels.json',
        measured: `${data.toFixed(1)} KB a panel`,
        ratio: data / MOST_DATA,
        budget: `${MOST_DATA} KB`,
        isWithin: data <= MOST_DATA,
      },
      {
        what: 'the heaviest calculation page',
        measured: `${heaviest.toFixed(1)} KB`,
        ratio: heaviest / MOST_CALCULATION,
        budget: `${MOST_CALCULATION} KB`,
        isWithin: heaviest <= MOST_CALCULATION,
      },
      ...(fullest > 0
        ? [
            {
              what: 'the heaviest page of files',
              measured: `${fullest.toFixed(1)} KB`,
              ratio: fullest / MOST_FILES_PAGE,
              budget: `${MOST_FILES_PAGE} KB`,
              isWithin: fullest <= MOST_FILES_PAGE,
            },
          ]
        : []),
    ],
  };
}
