import type { MarkedCard } from './make-card.ts';

/** What threads that draw cards are given: those of a panel or a method together, since they share lines and the code. */
export interface CardWork {
  waiting: ReadonlyArray<readonly MarkedCard[]>;
  /** Where cards are kept. */
  store: string;
  /** One place: how many of these have been taken. */
  count: Int32Array<SharedArrayBuffer>;
}

export const cardWork = (waiting: CardWork['waiting'], store: string): CardWork => ({
  waiting,
  store,
  count: new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT)),
});

/** The next cards, which nobody else gets; undefined where none are left. */
export const taken = ({ waiting, count }: CardWork): readonly MarkedCard[] | undefined =>
  waiting[Atomics.add(count, 0, 1)];

/** How many nobody has taken. */
export const left = ({ waiting, count }: CardWork): number => Math.max(0, waiting.length - Atomics.load(count, 0));

/** Leaves the rest: threads end with what they are at. */
export const leaveRest = ({ waiting, count }: CardWork): void => {
  Atomics.store(count, 0, waiting.length);
};
