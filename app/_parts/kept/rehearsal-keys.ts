/** Where this browser keeps rehearsals, and how they are cleared. In a file of its own, since every page can sign out. */

const PREFIX = "springline/rehearsals/";

export const rehearsalKey = (userId: string, planId: string): string => `${PREFIX}${userId}/${planId}`;

/** On signing out. */
export function dropAllRehearsals(): void {
  try {
    for (const store of [localStorage, sessionStorage]) {
      for (const key of Object.keys(store)) if (key.startsWith(PREFIX)) store.removeItem(key);
    }
  } catch {
    // nothing was kept
  }
}
