/** Share of the light that LEDs can plausibly give, above which a figure is odd, or cannot be. */
export const ODD_EFFICIENCY = 0.6;
/** Near-limit wall-plug efficiency of 660 nm LEDs: Kusuma, Pattison and Bugbee 2020, Horticulture Research 7:56. */
export const IMPOSSIBLE_EFFICIENCY = 0.81;
/** Iglewicz and Hoaglin 1993: modified z-scores beyond this are labelled potential outliers. */
export const OUTLIER_Z = 3.5;
/** Smallest relative distance of a grid point from what its row and column make likely, to be called out. Our own choice. */
export const SMALLEST_OUTLIER = 0.1;
/** Age at which a price is called stale, days. Our own choice. */
export const STALE_PRICE_DAYS = 90;
/** A measured peak wavelength further than this from the claim is said to be off, nm. Our own choice. */
export const WAVELENGTH_TOLERANCE_NM = 10;
