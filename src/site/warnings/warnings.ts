import { flagPlace } from '../../ledger/flag-place.ts';
import type { Loaded } from '../../ledger/load-ledger.ts';
import type { Flag } from '../../measure/figure.ts';
import { say } from '../../words/say.ts';
import { calibrationFractions } from './doubts/calibration-fraction.ts';
import { correctionsStand } from './doubts/corrections.ts';
import { demonstrationWords } from './doubts/demonstration-words.ts';
import { farFromOthers } from './doubts/far-from-others.ts';
import { filesUnnamed } from './doubts/files-unnamed.ts';
import { linksToFigures } from './doubts/links-to-figures.ts';
import { ownTexts } from './doubts/own-texts.ts';
import { photosUnnamed } from './doubts/photos-unnamed.ts';
import { oddPrices } from './doubts/prices.ts';
import { rankedApart } from './doubts/ranked-apart.ts';
import { sharesAddUp } from './doubts/shares.ts';
import { standardsRecalibrated } from './doubts/standard-recalibrated.ts';
import { textsCut } from './doubts/texts-cut.ts';
import { stillToFillIn } from './doubts/to-fill-in.ts';
import { type Warning, warningAt } from './warning.ts';

/** What can be doubted in the files though it flags no figure of a session. */
const DOUBTS: ReadonlyArray<(loaded: Loaded) => Warning[]> = [
  oddPrices,
  calibrationFractions,
  sharesAddUp,
  farFromOthers,
  rankedApart,
  photosUnnamed,
  filesUnnamed,
  standardsRecalibrated,
  correctionsStand,
  textsCut,
  stillToFillIn,
  ownTexts,
  linksToFigures,
  demonstrationWords,
];

/** Worst first. */
export const SEVERITIES = ['impossible', 'doubt', 'note'] as const satisfies ReadonlyArray<Flag['severity']>;

/**
 * Everything that is odd in content without problems, worst first, then by file and line: the flags of all figures,
 * which readers see too, and what only the tester can judge.
 *
 * @param least leaves out what weighs less; finding a note's line takes its time in a guide of a thousand panels
 */
export function warningsOf(loaded: Loaded, least: Flag['severity'] = 'note'): Warning[] {
  const lightest = SEVERITIES.indexOf(least);
  const all = [
    ...flagWarnings(loaded, (flag) => weight(flag) <= lightest),
    ...DOUBTS.flatMap((doubt) => doubt(loaded)),
  ];
  // What belongs to the panel as a whole is flagged in each of its sessions.
  const once = new Map(all.map((it) => [[it.file, it.check, it.text].join('\n'), it]));
  return worstFirst([...once.values()].filter((it) => weight(it) <= lightest));
}

const weight = (it: { severity: Flag['severity'] }) => SEVERITIES.indexOf(it.severity);

/** Worst first, then by file and line. */
export function worstFirst(warnings: readonly Warning[]): Warning[] {
  return warnings.toSorted((a, b) => weight(a) - weight(b) || a.file.localeCompare(b.file, 'en') || a.line - b.line);
}

function flagWarnings({ content, ledger }: Loaded, isWanted: (flag: Flag) => boolean): Warning[] {
  return [...ledger.panels.values()].flatMap(({ slug, sessions, flags, figures }) => {
    const entry = content.panels.get(slug);
    if (!entry) return [];
    const { data, source } = entry;
    const tested = sessions.map((session, index) => ({
      session,
      flags: session.flags,
      // Price and field stand with the current session's figures.
      figures: index === 0 ? figures : session.figures,
    }));
    return (tested.length > 0 ? tested : [{ session: undefined, flags, figures }]).flatMap((it) =>
      it.flags.filter(isWanted).map((flag) =>
        warningAt(source, flagPlace(flag, { slug, data, session: it.session, figures: it.figures }), {
          severity: flag.severity,
          check: flag.check,
          text: say(flag.finding),
          ...(flag.hint && { hint: say(flag.hint) }),
          figures: flag.concerns,
        }),
      ),
    );
  });
}
