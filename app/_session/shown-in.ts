/** All that a preview shows, as text: what is taken later is compared with it, so that only what was shown is taken. */
export const shownIn = (preview: object | null): string => JSON.stringify(preview);
