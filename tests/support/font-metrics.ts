/** What a face measures, in units of its em. */
export interface FaceMetrics {
  familyName: string;
  unitsPerEm: number;
  ascent: number;
  descent: number;
  lineGap: number;
  /** Mean advance of Latin letters, by how often English text has them. */
  xWidthAvg: number;
}

/**
 * Of the guide's faces and of those that stand in for them, by weight: read from @capsizecss/metrics 4.3.0, entry for
 * entry (`arial`, `arial/700` and so on). The package holds every face there is, in as many files as all other packages
 * together: these nine are kept here instead. DejaVu is not among them: read from the files of Debian's
 * fonts-dejavu-core 2.37 by @capsizecss/unpack, which counts letters in the same way.
 */
export const METRICS = {
  arial: { familyName: 'Arial', unitsPerEm: 2048, ascent: 1854, descent: -434, lineGap: 67, xWidthAvg: 913 },
  arialBold: { familyName: 'Arial', unitsPerEm: 2048, ascent: 1854, descent: -434, lineGap: 67, xWidthAvg: 983 },
  dejaVuSans: { familyName: 'DejaVu Sans', unitsPerEm: 2048, ascent: 1901, descent: -483, lineGap: 0, xWidthAvg: 1041 },
  dejaVuSansBold: {
    familyName: 'DejaVu Sans',
    unitsPerEm: 2048,
    ascent: 1901,
    descent: -483,
    lineGap: 0,
    xWidthAvg: 1176,
  },
  dejaVuSerifBold: {
    familyName: 'DejaVu Serif',
    unitsPerEm: 2048,
    ascent: 1923,
    descent: -483,
    lineGap: 0,
    xWidthAvg: 1168,
  },
  notoSerifBold: {
    familyName: 'Noto Serif',
    unitsPerEm: 1000,
    ascent: 1069,
    descent: -293,
    lineGap: 0,
    xWidthAvg: 512,
  },
  roboto: { familyName: 'Roboto', unitsPerEm: 2048, ascent: 1900, descent: -500, lineGap: 0, xWidthAvg: 911 },
  robotoBold: { familyName: 'Roboto', unitsPerEm: 2048, ascent: 1900, descent: -500, lineGap: 0, xWidthAvg: 926 },
  sans: { familyName: 'Source Sans 3', unitsPerEm: 1000, ascent: 1024, descent: -400, lineGap: 0, xWidthAvg: 418 },
  sansSemiBold: {
    familyName: 'Source Sans 3',
    unitsPerEm: 1000,
    ascent: 1024,
    descent: -400,
    lineGap: 0,
    xWidthAvg: 431,
  },
  serifSemiBold: {
    familyName: 'Source Serif 4',
    unitsPerEm: 1000,
    ascent: 1036,
    descent: -335,
    lineGap: 0,
    xWidthAvg: 486,
  },
  timesBold: {
    familyName: 'Times New Roman',
    unitsPerEm: 2048,
    ascent: 1825,
    descent: -443,
    lineGap: 87,
    xWidthAvg: 886,
  },
} as const satisfies Record<string, FaceMetrics>;
