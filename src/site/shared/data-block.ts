/**
 * Data for a block of a page that programs read and browsers do not run. No text in it can end the block: `<` is written
 * as its escape, which JSON readers take for the same.
 */
export const asData = (data: object): string => JSON.stringify(data).replace(/</g, '\\u003c');
