import { sameDistance } from '../../measure/irradiance/same-distance.ts';
import { type Field, fields, meant, problemAt } from '../read/fields.ts';
import type { Source } from '../read/source.ts';
import { CARRIED_NAMES, type CarriedName, carriedBlock } from '../schema/carried.ts';
import type { Problem } from '../schema/problem.ts';
import { parseQuantity } from '../schema/quantity.ts';
import { nearest } from '../schema/suggest.ts';
import type { RawCollections, Rule } from './rule.ts';

/** What a session carries over was read in an earlier, finished one of the panel, and was not read again. */
export const carriedReadings: Rule = {
  id: 'carried-readings',
  run: (content) =>
    [...content.panels.values()].flatMap((panel) => {
      const sessions = fields(panel.data, ['sessions', '*']);
      return sessions.flatMap((session) =>
        CARRIED_NAMES.flatMap((name) =>
          fields(session.value, ['carried', name], session.path).flatMap((field) =>
            typeof field.value === 'string' ? problemsOf({ content, panel, sessions, session, name, field }) : [],
          ),
        ),
      );
    }),
};

/** One block that one session carries over. */
interface Carried {
  content: RawCollections;
  panel: Source;
  sessions: readonly Field[];
  session: Field;
  name: CarriedName;
  field: Field;
}

function problemsOf(carried: Carried): Problem[] {
  const { panel, sessions, session, name, field } = carried;
  const origin = sessions.find((it) => dayOf(it) === field.value);
  const problem = originProblem(carried, origin);
  if (problem) return [problem];
  const again = carriedBlock(name).fields.flatMap((key) => fields(session.value, [key], session.path));
  if (again.length > 0) {
    const read = again.map(({ path }) => String(path.at(-1))).join(', ');
    const wanted = `${carriedBlock(name).name} either read in this session or carried over: ${read} stands in it as well`;
    const hint =
      name === 'light'
        ? 'readings of light belong together: take them all again, or none of them'
        : `take out carried.${name}, or the readings`;
    return [problemAt(panel, field, wanted, hint)];
  }
  return [...namedInstrument(carried), ...(name === 'light' ? otherDistance(carried, origin) : [])];
}

/** What is wrong with the session that the readings are said to come from. */
function originProblem({ panel, sessions, session, name, field }: Carried, origin: Field | undefined) {
  const { name: what } = carriedBlock(name);
  const day = dayOf(session) ?? '';
  const read = sessions.filter((it) => hasRead(it, name) && !isDraft(it)).flatMap((it) => dayOf(it) ?? []);
  const earlier = read.filter((it) => it < day).toSorted();
  const wanted = `the day of an earlier session of this panel in which ${what} was read: ${earlier.join(', ') || 'there is none'}`;
  if (!origin) {
    return problemAt(panel, field, wanted, meant(nearest(String(field.value), earlier)));
  }
  if (origin === session) return problemAt(panel, field, wanted, 'a session does not carry over from itself');
  if (hasRead(origin, name)) {
    if (isDraft(origin)) return problemAt(panel, field, wanted, 'that session is a draft');
    if (!(String(field.value) < day)) return problemAt(panel, field, wanted, 'that session is the later one');
    return undefined;
  }
  const [through] = fields(origin.value, ['carried', name]);
  const hint = through
    ? `that session carried it over itself: name the day on which it was read, ${String(through.value)}`
    : 'it was not read in that session';
  return problemAt(panel, field, wanted, hint);
}

/** A meter that is named for readings that nobody took: they keep that of their own session. */
function namedInstrument({ panel, session, name, field }: Carried): Problem[] {
  const { instrument, name: what } = carriedBlock(name);
  if (!instrument) return [];
  return fields(session.value, ['instruments', instrument], session.path).map((named) =>
    problemAt(
      panel,
      named,
      `no meter for what was not read: ${what} is carried over, with its meter, from ${String(field.value)}`,
      `take out instruments.${instrument}`,
    ),
  );
}

/** Light that was read from one distance can't stand for another. */
function otherDistance({ content, panel, session, field }: Carried, origin: Field | undefined): Problem[] {
  const [own] = fields(session.value, ['distance'], session.path);
  if (!own) return [];
  const [guide] = content.guide.values();
  const there = fields(origin?.value, ['distance'])[0]?.value ?? fields(guide?.data, ['referenceDistance'])[0]?.value;
  const [here, then] = [lengthOf(own.value), lengthOf(there)];
  if (here === undefined || then === undefined || sameDistance(here, then)) return [];
  const wanted = `the distance at which the light was read on ${String(field.value)}: ${String(there)}`;
  return [problemAt(panel, own, wanted, 'take the distance out, or read the light again at this one')];
}

function lengthOf(value: unknown): number | undefined {
  if (typeof value !== 'number' && typeof value !== 'string') return undefined;
  const parsed = parseQuantity(value, 'length');
  return 'reading' in parsed ? parsed.reading.value : undefined;
}

function dayOf(session: Field): string | undefined {
  const day = fields(session.value, ['date'])[0]?.value;
  return typeof day === 'string' ? day : undefined;
}

const hasRead = (session: Field, name: CarriedName) =>
  carriedBlock(name).fields.some((key) => fields(session.value, [key]).length > 0);

const isDraft = (session: Field) => fields(session.value, ['draft'])[0]?.value === true;
