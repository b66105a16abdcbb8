/** The channels that a panel can light alone, as metrics spell them. */
export const CHANNELS = ['red', 'near-infrared'] as const;
export type Channel = (typeof CHANNELS)[number];

/** The modes in which a panel is read: each channel alone, then both. */
export const MODES = [...CHANNELS, 'combined'] as const;
export type Mode = (typeof MODES)[number];

/** The same as tables and checks go through them: what people use first. */
export const MODES_COMBINED_FIRST = ['combined', ...CHANNELS] as const;
