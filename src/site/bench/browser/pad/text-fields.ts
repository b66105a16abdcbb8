/** What a session says in words. */
export const HOT_SPOTS_FIELD = { key: 'hotSpots', head: 'Hot spots on the wall, in words' } as const;
export const NOTES_FIELD = { key: 'notes', head: 'Anything that happened on the bench' } as const;
