import type { ShownFigure } from '../shared/shown-figure.ts';
import { unreadOf } from './channels-view.ts';
import type { LimitsView } from './limits-view.ts';
import type { ReadingsView } from './readings-view.ts';
import { sharedDay, undated } from './shared-day.ts';

/** Fields and sound with the panel off and on. */
export interface FieldsView {
  rows: Array<{
    id?: string;
    name: string;
    place: string;
    /** From which day all readings of the line are. */
    carried?: string;
    off: ShownFigure;
    on: ShownFigure;
    frequency?: ShownFigure;
  }>;
  /** The panel's sound without the room's. */
  alone?: ShownFigure;
  unread: string[];
  methods: Array<{ address: string; name: string }>;
}

/** What was read around a panel; what was not is one sentence. */
export function fieldsView(
  { surroundings }: Pick<ReadingsView, 'surroundings'>,
  limits: LimitsView | undefined,
): FieldsView {
  const isRead = ({ on, off }: { on: ShownFigure; off: ShownFigure }) =>
    on.shown !== undefined || off.shown !== undefined;
  const read = surroundings.filter(isRead);
  const hasSound = read.some((it) => it.on.metric === 'sound-on');
  return {
    rows: read.map(({ name, distance, off, on, frequency }) => {
      const carried = sharedDay([off, on, frequency]);
      return {
        name,
        place: distance,
        ...(carried && { carried }),
        off: undated(off, carried),
        on: undated(on, carried),
        ...(frequency?.shown && { frequency: undated(frequency, carried) }),
      };
    }),
    ...(hasSound && limits && { alone: limits.sound }),
    unread: unreadOf(surroundings.filter((it) => !isRead(it)).map((it) => [it.name, it.on] as const)),
    methods: read.map(({ method, name }) => ({ address: method, name: name.toLowerCase() })),
  };
}
