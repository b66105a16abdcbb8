/*
 * When a panel's light has settled: its highest less its lowest value lie within half a percent of the last one. From memory:
 * CIE S 025:2015 and IES LM-79-19 for a log, LM-79-08 for readings by hand. The texts were not read; that the last value is what
 * the spread is divided by is our own choice.
 *
 * There are two samplings, each in a file of its own. A log (`settled.ts`) has every minute, and is held against its last 15
 * minutes, backwards from its end. A hand at the bench (`../irradiance/settling.ts`) has a reading every 15 minutes, of which
 * one window would hold two: so three count, over half an hour, and the same half a percent is the stricter rule for a drift.
 * What comes and goes between its readings it can't see; the log does.
 */

/** Spread that is settled, % of the last value. */
export const SETTLED_SPREAD = 0.5;

/** s: the window of a log, and the time from one reading by hand to the next. */
export const SETTLED_WINDOW = 15 * 60;

/** s: the shortest log, and the time from the first of three readings to the last. */
export const SHORTEST_LOG = 2 * SETTLED_WINDOW;
