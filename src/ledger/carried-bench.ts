import { type CarriedName, carriedBlock, carriedOf } from '../content/schema/carried.ts';
import type { Session } from '../content/schema/session.ts';
import type { Figure } from '../measure/figure.ts';
import type { FileViews, MadeOfFiles } from './files/file-maker.ts';
import type { SessionBench } from './session-bench.ts';

/** A block that a session carries over, and the session in which it was read. */
interface Origin {
  name: CarriedName;
  bench: SessionBench;
}

/**
 * A session with what it carries over in its place. Each block comes with all that it was read with (the meter as it was
 * calibrated on that day, the distance, the warm-up, the version of the procedure) and with its figures as they were made
 * there, whose errors keep their keys: an old calibration's error stays that calibration's.
 *
 * @param benches all sessions of the panel by their days, each by itself
 */
export function withCarried(bench: SessionBench, benches: ReadonlyMap<string, SessionBench>): SessionBench {
  const origins = carriedOf(bench.own).map(({ name, from }): Origin => {
    const origin = benches.get(from);
    if (!origin) throw new Error(`${bench.id}: ${name} was carried over from a session that is not there`);
    return { name, bench: origin };
  });
  if (origins.length === 0) return bench;
  const byKind = new Map(origins.map((it) => [carriedBlock(it.name).instrument, it.bench]));
  const light = byKind.get('irradiance');
  return {
    ...bench,
    session: origins.reduce(sessionWith, bench.own),
    lightId: light?.id ?? bench.id,
    instrumentFor: (kind) => (byKind.get(kind) ?? bench).instrumentFor(kind),
    distance: (light ?? bench).distance,
    bands: (light ?? bench).bands,
    readings: [...bench.readings, ...origins.flatMap(readingsOf)],
    files: [...bench.files, ...origins.flatMap(filesOf)],
    made: new Map([...bench.made, ...origins.flatMap(madeIn)]),
  };
}

/** A session with one more block of an earlier one, and with what that was read with. */
function sessionWith(session: Session, { name, bench: { own: origin } }: Origin): Session {
  const { fields, instrument } = carriedBlock(name);
  const id = instrument && origin.instruments[instrument];
  return {
    ...session,
    ...picked(origin, fields),
    ...(name === 'light' && {
      ...picked(origin, ['distance', 'warmUp']),
      methodVersion: origin.methodVersion,
    }),
    ...(instrument && id !== undefined && { instruments: { ...session.instruments, [instrument]: id } }),
  };
}

function picked(session: Session, names: readonly string[]): Partial<Session> {
  return Object.fromEntries(Object.entries(session).filter(([name]) => names.includes(name)));
}

/** The files of a block. */
function filesOf({ name, bench }: Origin): SessionBench['files'] {
  const { fields } = carriedBlock(name);
  return bench.files.filter(({ field: [block] }) => fields.includes(String(block)));
}

/** What was made of them. */
function madeIn({ name, bench }: Origin): Array<[string, MadeOfFiles<FileViews[keyof FileViews]>]> {
  const { fields } = carriedBlock(name);
  return [...bench.made].filter(([block]) => fields.includes(block));
}

/** The figures of a block's plain readings; the path of a reading says which block it is in. */
function readingsOf({ name, bench }: Origin): Figure[] {
  const { fields } = carriedBlock(name);
  return bench.readings.filter(({ inputs: [path = ''] }) =>
    fields.some((field) => path.startsWith(`${bench.id}/${field}.`)),
  );
}
