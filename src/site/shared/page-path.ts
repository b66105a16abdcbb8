/** The path of a page from the guide's own top, `/panels/plover/`, wherever on its host the guide lies. */
export const pagePath = ({ pathname }: URL): string => pathname.slice(import.meta.env.BASE_URL.length - 1);
