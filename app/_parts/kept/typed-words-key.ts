/** Where this tab keeps words that were typed and not sent, and how they are cleared. Apart, since every page can sign out. */

const PREFIX = "springline/typed/";

export const typedWordsKey = (userId: string, planId: string): string => `${PREFIX}${userId}/${planId}`;

/** On signing out. */
export function dropAllTypedWords(): void {
  try {
    for (const key of Object.keys(sessionStorage)) if (key.startsWith(PREFIX)) sessionStorage.removeItem(key);
  } catch {
    // nothing was kept
  }
}
