/**
 * The path of a page from the guide's own top, `/panels/plover/`, wherever on its host the guide lies.
 *
 * @param base where that is, with a slash at both ends
 */
export const pagePath = ({ pathname }: URL, base: string): string => pathname.slice(base.length - 1);
