/** What the run sheet's script gets from the page. */
import type { CalibrationSpan } from './calibration-state.ts';
import type { SheetPanel } from './sheet-setup.ts';

/** A meter as regards one quantity that it reads. */
export interface SheetMeter {
  /** `irradiance:bench-thermopile` */
  key: string;
  kind: string;
  name: string;
  spans: readonly CalibrationSpan[];
}

export interface SheetData {
  /** By the names of their folders. */
  panels: Readonly<
    Record<
      string,
      SheetPanel & {
        /** Keys of the meters of its newest session, as far as they are not the usual ones; left out where all are. */
        meters?: readonly string[];
        /** Names that addresses had for it before; left out where there are none. */
        formerly?: readonly string[];
      }
    >
  >;
  meters: readonly SheetMeter[];
  /** Keys of the meters that stand on the sheet where no panel says otherwise: the last one used of each kind. */
  usual: readonly string[];
  /** cm */
  distance: number;
}

/** Keys of the meters on the sheet: of each kind the panel's own, or else the usual one. */
export function metersFor({ panels, usual }: Pick<SheetData, 'panels' | 'usual'>, slug: string | undefined): string[] {
  const own = (slug === undefined ? undefined : panels[slug]?.meters) ?? [];
  const kindOf = (key: string) => key.slice(0, key.indexOf(':'));
  const kinds = new Set(own.map(kindOf));
  return [...own, ...usual.filter((it) => !kinds.has(kindOf(it)))];
}
