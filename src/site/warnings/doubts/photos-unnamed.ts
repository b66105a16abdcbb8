import type { Loaded } from '../../../ledger/load-ledger.ts';
import { type Warning, warningAt } from '../warning.ts';

/** Pictures beside a panel's index that nothing shows: forgotten, or kept as raw files, which is welcome. */
export function photosUnnamed({ content }: Loaded): Warning[] {
  return [...content.photos].flatMap(([slug, { unnamed }]) => {
    const source = content.panels.get(slug)?.source;
    if (!source) return [];
    return unnamed.map((name) =>
      warningAt(source, ['photos'], {
        severity: 'note',
        check: 'photo-unnamed',
        text: `“${name}” lies beside this file, and neither photos nor the notes name it: no page shows it.`,
        hint: `list it with what it shows: - { file: ${JSON.stringify(name)}, shows: … }`,
      }),
    );
  });
}
