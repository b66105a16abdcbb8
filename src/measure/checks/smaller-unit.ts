/** Fields that are read with the panel on, and with it off, which is the room. */
export const FIELDS = ['magnetic', 'electric', 'radio'] as const;
export type FieldKind = (typeof FIELDS)[number];

/** A smaller unit that an instrument may have shown in the place of the documented one. */
export interface SmallerUnit {
  /** The documented unit of the field. */
  unit: 'µT' | 'V/m' | 'mW/m²';
  /** The smaller one, in its proper signs and as one types it. */
  smaller: string;
  typed: string;
  /** How many of it make one of `unit`. */
  factor: number;
}

/** 1 µT is 10 mG. */
export const SMALLER_UNITS = {
  magnetic: { unit: 'µT', smaller: 'mG', typed: 'mG', factor: 10 },
  electric: { unit: 'V/m', smaller: 'mV/m', typed: 'mV/m', factor: 1000 },
  radio: { unit: 'mW/m²', smaller: 'µW/m²', typed: 'uW/m2', factor: 1000 },
} as const satisfies Record<FieldKind, SmallerUnit>;
