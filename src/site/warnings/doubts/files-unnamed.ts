import type { Loaded } from '../../../ledger/load-ledger.ts';
import { type Warning, warningAt } from '../warning.ts';

/** Files that look like a meter's and lie beside a panel's index without being named: nothing is read from them. */
export function filesUnnamed({ content }: Loaded): Warning[] {
  return [...content.benchFiles].flatMap(([slug, { unnamed }]) => {
    const entry = content.panels.get(slug);
    if (!entry) return [];
    return unnamed.map((name) =>
      warningAt(entry.source, ['sessions'], {
        severity: 'doubt',
        check: 'file-unnamed',
        text: `“${name}” lies beside this file, and no session names it: nothing is read from it.`,
        hint: `\`npm run ledger -- import\` with its path puts it into a session; or list it there under otherFiles: - { file: ${JSON.stringify(name)}, shows: … }`,
      }),
    );
  });
}
