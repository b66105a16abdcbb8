/** Printers' marks beside figures; apart, since the reader's tools need no more of them. */
export const IMPOSSIBLE_MARK = '‡';
export const DOUBT_MARK = '†';
