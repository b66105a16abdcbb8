/**
 * `41,2` as number pads of many countries give it. A comma before three digits may as well mark thousands, and stays:
 * it is refused with what to write instead.
 */
export const withPoint = (text: string): string => text.replace(/^([<>]?\s*[+-]?\d*),(?!\d{3}(?!\d))(\d+)/, '$1.$2');
