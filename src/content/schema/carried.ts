import { z } from 'zod';
import { isoDate } from './fields.ts';
import type { InstrumentKind } from './instrument.ts';

/** What a session can carry over from an earlier one, as one block: fields that are read together, with one instrument. */
interface CarriedBlock {
  /** Fields of a session that it takes. */
  fields: readonly string[];
  /** The instrument that read them. */
  instrument?: InstrumentKind;
  /** What it is called in a sentence. */
  name: string;
}

/**
 * The blocks by the name under which a session carries them over. Readings of light are one block: the model of the
 * light, and each channel's share of the power, hold them against one another, so they belong to one day, one distance
 * and one state of the panel.
 */
export const CARRIED_BLOCKS = {
  light: {
    fields: ['peak', 'grid', 'distances', 'beyond', 'sweeps', 'warmUpLog'],
    instrument: 'irradiance',
    name: 'light',
  },
  wavelengths: { fields: ['wavelengths', 'spectra'], instrument: 'spectrum', name: 'wavelengths' },
  mains: { fields: ['mains'], instrument: 'mains', name: 'mains draw' },
  magnetic: { fields: ['magnetic'], instrument: 'magnetic', name: 'magnetic field' },
  electric: { fields: ['electric'], instrument: 'electric', name: 'electric field' },
  radio: { fields: ['radio'], instrument: 'radio', name: 'radio' },
  sound: { fields: ['sound', 'soundClips'], instrument: 'sound', name: 'sound' },
  flicker: { fields: ['flicker', 'waveforms'], instrument: 'flicker', name: 'flicker' },
  hotSpots: { fields: ['hotSpots', 'wallPhoto'], name: 'hot spots' },
} as const satisfies Record<string, CarriedBlock>;

export type CarriedName = keyof typeof CARRIED_BLOCKS;
export const CARRIED_NAMES = Object.keys(CARRIED_BLOCKS) as CarriedName[];

/** A block by its name, with the type that all of them share. */
export const carriedBlock = (name: CarriedName): CarriedBlock => CARRIED_BLOCKS[name];

/** Which blocks were not read again, each with the day of the session that it comes from. Nothing is copied. */
export const carriedReadings = z
  .strictObject(
    Object.fromEntries(
      CARRIED_NAMES.map((name) => {
        const { fields } = carriedBlock(name);
        const what = fields.length > 1 ? `${fields.slice(0, -1).join(', ')} and ${fields.at(-1)} together` : fields[0];
        return [name, isoDate(`Day of the earlier session in which this was read: ${what}.`).optional()];
      }),
    ) as Record<CarriedName, z.ZodOptional<ReturnType<typeof isoDate>>>,
  )
  .describe(
    'What was not read again, each block with the day of the earlier session that it comes from. Its readings stand there, and keep that day’s instruments, calibration and distance.',
  );

/** A session's carried blocks, in the order of the list above. */
export function carriedOf(session: { carried?: Partial<Record<CarriedName, string | undefined>> | undefined }): Array<{
  name: CarriedName;
  from: string;
}> {
  return CARRIED_NAMES.flatMap((name) => {
    const from = session.carried?.[name];
    return from === undefined ? [] : [{ name, from }];
  });
}
