import { isBlock } from '../schema/block.ts';
import { GAP } from '../schema/gap.ts';
import { INSTRUMENT_KINDS, type InstrumentKind } from '../schema/instrument-kinds.ts';
import { panelSchema } from '../schema/panel.ts';
import { comment } from './explanation.ts';
import { fileText } from './file-text.ts';
import { jsonSchemaOf } from './json-schema.ts';

/** What of a panel's file is known beforehand. */
export interface NewPanel {
  /** Fields that are known, in the shape of the file; of lists the first entry, such as `prices`. */
  values: Readonly<Record<string, unknown>>;
  session: NewSession;
}

/** A session that is still to be held. */
export interface NewSession {
  /** `YYYY-MM-DD` */
  date?: string | undefined;
  /** As the file has it. */
  methodVersion: unknown;
  distance: unknown;
  /** The instruments that the bench has, by what they read. Their readings leave gaps, all others are commented out. */
  instruments: Readonly<Partial<Record<InstrumentKind, string>>>;
  grid: { columns: number; rows: number };
}

/** What readers look for on every panel's page. */
const ASKED = [
  'obtained.how',
  'obtained.paidBy',
  'claims.wavelengths.peak',
  'claims.wavelengths.share',
  'claims.irradiance.value',
  'claims.irradiance.distance',
  'claims.power',
  'prices.list',
  'prices.paid',
  'field',
  'sessions.warmUp',
];

const modes = (block: string, fields = ['']) =>
  ['red', 'nearInfrared', 'combined'].flatMap((mode) => fields.map((it) => `${block}.${mode}${it}`));

/** What each kind of instrument is there to read. */
const READ_BY: Readonly<Record<InstrumentKind, readonly string[]>> = {
  irradiance: [...modes('peak'), 'grid.rows'],
  spectrum: ['red', 'nearInfrared'].flatMap((it) => [`wavelengths.${it}.peak`, `wavelengths.${it}.fwhm`]),
  mains: ['mains.standby', ...modes('mains')],
  magnetic: ['magnetic.distance', 'magnetic.off', 'magnetic.on', 'magnetic.frequency'],
  electric: ['electric.distance', 'electric.off', 'electric.on', 'electric.frequency'],
  radio: ['radio.distance', 'radio.off', 'radio.on'],
  sound: ['sound.distance', 'sound.off', 'sound.on'],
  flicker: modes('flicker', ['.frequency', '.percent']),
  length: [],
  temperature: ['roomTemperature'],
};

/** Which meter it would be, only the tester knows. */
const NO_METERS = Object.fromEntries(INSTRUMENT_KINDS.map((kind) => [kind, GAP]));
const WITHOUT_METER = {
  'sessions.instruments': NO_METERS,
  ...Object.fromEntries(INSTRUMENT_KINDS.map((kind) => [`sessions.instruments.${kind}`, GAP])),
};

/** Version of the bench procedure from which on readings past the edges belong to it, and where they are taken. */
const BEYOND = {
  from: 2,
  places: ['right', 'top'].flatMap((edge) => ['8 cm', '20 cm', '40 cm'].map((past) => ({ edge, past }))),
};

/** What is known of the session besides. */
const firstOf = (sessions: unknown) => (Array.isArray(sessions) && isBlock(sessions[0]) ? sessions[0] : {});

/**
 * The text of a new panel's `index.md`: front matter with every field that there is, and an empty body. Every field comes
 * from the schema; nothing is read from disk.
 */
export function newPanelText({ values, session }: NewPanel): string {
  const { date, methodVersion, distance, instruments, grid } = session;
  const kinds = Object.keys(instruments) as InstrumentKind[];
  const reads = kinds.flatMap((kind) => READ_BY[kind]);
  const hasLight = kinds.includes('irradiance');
  // The procedure asks for them, whether or not the meter has a file yet.
  const isAskedBeyond = Number(methodVersion) >= BEYOND.from;
  const row = Array.from({ length: grid.columns }, () => GAP);
  const text = fileText(jsonSchemaOf(panelSchema), {
    values: {
      status: 'draft',
      ...values,
      sessions: [
        {
          date,
          methodVersion,
          ...(kinds.length > 0 && { instruments }),
          distance,
          ...(hasLight && { grid: { inset: '1 in', rows: Array.from({ length: grid.rows }, () => row) } }),
          ...(isAskedBeyond && { beyond: BEYOND.places }),
          ...firstOf(values.sessions),
        },
      ],
    },
    asked: [...ASKED, ...reads.map((it) => `sessions.${it}`), ...(isAskedBeyond ? ['sessions.beyond.off'] : [])],
    offered: WITHOUT_METER,
    // A first session has none before it; the command for a re-test writes it.
    without: ['sessions.carried'],
  });
  const notes = comment('Below the next line, in Markdown: what arrived, how it is built, what borrowers said.', '');
  return `---\n${text}\n${notes.join('\n')}\n---\n\n`;
}
