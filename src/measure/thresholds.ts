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
/** Days before a calibration runs out that it counts as due: time to send a meter away and have it back. Our own choice. */
export const CALIBRATION_DUE_DAYS = 60;
/** Age at which a panel is due on the bench again, years: LEDs age, and makers change what is under a name. Our own choice. */
export const OLD_SESSION_YEARS = 2;
/** Age at which an exchange rate is called old, days; as long as a price. Our own choice. */
export const OLD_RATE_DAYS = STALE_PRICE_DAYS;
/** Age at which a tariff, or what a maker claims, is called old, years. Our own choice. */
export const OLD_TARIFF_YEARS = 1;
export const OLD_CLAIMS_YEARS = 1;
