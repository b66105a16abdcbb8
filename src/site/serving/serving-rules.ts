import { CONTENT_POLICY } from '../shared/content-policy.ts';

/** What a host that can send headers should send with the guide; every recipe is made of these lists. */

/**
 * Who may show a page within one of theirs: nobody, so that none of it is laid under another's button. Only a header can
 * say that: browsers pass over it in a page's own policy.
 */
export const FRAMED_BY_NONE = `${CONTENT_POLICY}; frame-ancestors 'none'`;
/** Of what is made to be shown within pages of others. */
const FRAMED_BY_ALL = `${CONTENT_POLICY}; frame-ancestors *`;

/** Folders of the guide that other sites may show in a frame. */
const EMBEDDABLE = ['/cards/'] as const;
/** Folders whose files scripts of other sites may read: they are given away. */
const SHARED = ['/data/'] as const;

/**
 * Folders whose files have their content's mark in their names, so that a file never changes: browsers may keep it for
 * good. Everything else is asked for anew, the pages and a worker's script above all, and most often has not changed.
 *
 * The same mark makes Subresource Integrity idle here: the page that would say the hash comes from the same host as the
 * file, so whoever can change one can change both. It is for files from elsewhere, and a guide loads none.
 */
const KEPT_FOR_GOOD = ['/_astro/', '/photos/', '/pagefind/fragment/', '/pagefind/index/'] as const;
const FOR_GOOD = 'public, max-age=31536000, immutable';
const ASK_AGAIN = 'no-cache';

/** A header that some folders of the guide have otherwise than all the rest. */
export interface HeaderByFolder {
  name: string;
  /** Everywhere but in these; left out where it is empty. */
  otherwise: string;
  folders: readonly string[];
  value: string;
}

export const HEADERS_BY_FOLDER: readonly HeaderByFolder[] = [
  { name: 'Content-Security-Policy', otherwise: FRAMED_BY_NONE, folders: EMBEDDABLE, value: FRAMED_BY_ALL },
  { name: 'Cache-Control', otherwise: ASK_AGAIN, folders: KEPT_FOR_GOOD, value: FOR_GOOD },
  { name: 'Access-Control-Allow-Origin', otherwise: '', folders: SHARED, value: '*' },
];

/** Of a browser's abilities: what the bench pages use of meters and cameras, for the guide alone; the rest for nobody. */
const ABILITIES: Readonly<Record<string, '(self)' | '()'>> = {
  accelerometer: '()',
  camera: '(self)',
  'display-capture': '()',
  geolocation: '()',
  gyroscope: '()',
  hid: '(self)',
  magnetometer: '()',
  microphone: '()',
  midi: '()',
  payment: '()',
  serial: '(self)',
  usb: '()',
};

/** Headers of every answer besides the policy and how long it may be kept. */
export const HEADERS: ReadonlyArray<readonly [name: string, value: string]> = [
  ['X-Content-Type-Options', 'nosniff'],
  ['Referrer-Policy', 'strict-origin-when-cross-origin'],
  [
    'Permissions-Policy',
    Object.entries(ABILITIES)
      .map(([name, who]) => `${name}=${who}`)
      .join(', '),
  ],
];
