/**
 * Where the guide lies on its host. Within the guide addresses begin with a slash at its own top (`/panels/…`); what
 * leaves it (canonical addresses, data files, the sitemap) is made here, and a guide below a path stays whole.
 */

/** The path below which a guide is published, with a slash at both ends: `/`, or `/some/path/`. */
export function sitePath(site: string): string {
  return new URL(site).pathname.replace(/\/*$/, '/');
}

/**
 * The full address of a page or file of the guide.
 *
 * @param path from the guide's own top, beginning with a slash
 * @example siteAddress('/panels/plover/', 'https://host.example/some/path') // https://host.example/some/path/panels/plover/
 */
export function siteAddress(path: string, site: string): string {
  return new URL(sitePath(site) + path.slice(1), site).href;
}
