/** Address of a panel's page. */
export function panelAddress(slug: string): string {
  return `/panels/${slug}/`;
}
