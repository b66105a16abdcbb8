/** Scripts call pages as the guide does, from its own top (`/panels/…`); here these become addresses on its host. */

/** Path of the guide on its host, without the slash at its end: nothing, or `/some/path`. */
const BASE = (import.meta.env?.BASE_URL ?? '/').replace(/\/$/, '');

/** An address of the guide as the browser has to call it; what does not begin at the guide's top stays as it is. */
export const inSite = (address: string): string => (/^\/(?!\/)/.test(address) ? BASE + address : address);

/** The way back: an address that the page has, as the guide calls it. */
export const inGuide = (address: string): string =>
  BASE !== '' && address.startsWith(`${BASE}/`) ? address.slice(BASE.length) : address;
