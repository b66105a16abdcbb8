import type { CardFormat } from './card-formats.ts';

/** The page that lists them; where the guide asks for cards or badges. */
export const CARDS_PAGE = '/cards/';

/** Where cards lie; a panel's under its slug. */
const FOLDER = '/cards/';

/** Address of the picture that stands where a panel's page is linked to. */
export const previewAddress = (slug: string) => `${FOLDER}${slug}/preview.png`;

/** Address of the picture that stands where a method's page is linked to: its wide card. */
export const methodPreviewAddress = (id: string) => `${methodCardAddress(id, 'wide')}.png`;

/** Address of a panel's card to show, without the ending. */
export const panelCardAddress = (slug: string, format: CardFormat['id']) => `${FOLDER}${slug}/${format}`;

/** Address of a method's card to show, without the ending. */
export const methodCardAddress = (id: string, format: CardFormat['id']) => `${FOLDER}methods/${id}/${format}`;

/** Address of the badge and the small card of a panel's figure, without the ending. */
export const badgeAddress = (slug: string, metric: string) => `${FOLDER}${slug}/${metric}`;

/** Styles of the small cards. */
export const BADGE_STYLES = `${FOLDER}card.css`;
