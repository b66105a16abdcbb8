/**
 * What a tester is told of the device at the bench: its store, its meter, a chosen folder, its camera. What happened
 * comes first, then what to do. By the codes of `site/bench/browser/`, whose types see that none is left out.
 */

/** Why the store of runs did not do what was asked. */
export const STORE_WORDS = {
  'not-there':
    'This browser keeps nothing here: a private window, or storage is switched off. Nothing that you enter would outlast the page. Open the pad in an ordinary window.',
  full: 'The device has no room left, and this was not kept. Make room, then enter it again.',
  newer: 'A newer version of the pad has been at the runs on this device. Load the page again with the network on.',
  closed:
    'The browser has closed the store, and this was not kept. Load the page again: all entries before it are there.',
  gone: 'This run was removed in another window.',
  behind: 'Another window has changed this run. It is shown as it is now; look again, then repeat what you did.',
  taken: 'There is one of that name already.',
} as const;

/** Why a meter is not heard. */
export const FEED_WORDS = {
  'not-there': 'This browser can’t read a meter. Type the readings, or use a browser that can.',
  'none-chosen': 'No meter was chosen.',
  busy: 'Another program or window has the meter. Close it there, then connect again.',
  unplugged: 'The meter is not connected any more. What it sent before is kept.',
  refused: 'The browser or the system does not let this page read the meter.',
  failed: 'The meter could not be opened.',
} as const;

/** Why nothing was written into a folder. */
export const FOLDER_WORDS = {
  'not-there': 'This browser can’t write into a folder. Download the file, and put it into the panel’s folder.',
  'none-chosen': 'No folder was chosen.',
  refused: 'The browser was not allowed to write there. Choose the folder again, or download the file.',
  'no-guide': 'There is no guide.yaml in that folder. Choose the guide’s content folder.',
  changed:
    'Nothing was written: the panel’s file has changed since the pad read it. Open it again, so that nothing of it is lost.',
  'photo-there': 'Nothing was written: another picture of that name is there. Give yours another name.',
  failed: 'The folder could not be written. Download the file instead.',
} as const;

/** Why a picture was not taken in. */
export const PHOTO_WORDS = {
  kind: 'not a JPEG, PNG, WebP or AVIF picture',
  empty: 'an empty file',
  full: 'no room is left on the device',
} as const;

/** Why a meter’s line gives no reading. */
export const LINE_WORDS = {
  empty: 'An empty line.',
  long: 'The line is longer than a reading’s. Is the speed of the port right?',
  'no-number': 'There is no number in the line.',
  'no-match': 'The pattern is not in the line.',
  overload: 'The meter shows an overload. Choose a higher range, or move back; nothing was entered.',
  'no-value': 'The meter shows no value. Nothing was entered.',
  unclear:
    'The number can be read in two ways. Say whether a comma or a point stands before the decimals, or write a pattern.',
} as const;

/** What is wrong with a pattern for lines. */
export const PATTERN_WORDS = {
  empty: 'Without a pattern the last number in the line counts.',
  long: 'The pattern is too long.',
  'no-number': 'Say where the number is: E = {number} {unit}, or a group (?<number>…) in a regular expression.',
  twice: 'A pattern has one number and one unit; {any} may stand in several places.',
  place: 'Only {number}, {unit} and {any} may stand in braces.',
  expression: 'The browser can’t read this regular expression.',
} as const;

/** Whether the pad works without the network. */
export const OFFLINE_WORDS = {
  none: 'Needs the network: this browser keeps no pages.',
  keeping: 'Being kept for use without the network.',
  kept: 'Works without the network.',
  newer: 'A newer version of the pad is there.',
  failed: 'Could not be kept for use without the network.',
} as const;
