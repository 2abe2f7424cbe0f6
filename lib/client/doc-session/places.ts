/** Who else is on this page and where, from awareness. States of an unknown shape are skipped. */
import type { Awareness } from "y-protocols/awareness";
import * as z from "zod/mini";

/** The person at this page, as the server knows them. */
export interface PagePerson {
  readonly id: string;
  readonly name: string;
}

/** Somebody else on this page and the item they are on. */
export interface ColleaguePlace {
  readonly clientId: number;
  readonly userId: string;
  readonly name: string;
  readonly itemId: string | null;
}

const stateSchema = z.object({
  user: z.object({ id: z.string(), name: z.string() }),
  item: z.optional(z.nullable(z.string())),
});

export function placesOf(awareness: Awareness, me: PagePerson): ColleaguePlace[] {
  const places: ColleaguePlace[] = [];
  for (const [clientId, state] of awareness.getStates()) {
    if (clientId === awareness.clientID) continue;
    const parsed = stateSchema.safeParse(state);
    if (!parsed.success) continue;
    const { user, item } = parsed.data;
    const name = user.id === me.id ? `${user.name} (another window)` : user.name;
    places.push({ clientId, userId: user.id, name, itemId: item ?? null });
  }
  return places.sort((a, b) => a.clientId - b.clientId);
}
