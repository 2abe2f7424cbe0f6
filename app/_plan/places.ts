/** Who else is on this page and on which item, from awareness. States of a foreign shape are passed over. */
import type { Awareness } from "y-protocols/awareness";
import * as z from "zod";
import type { Me, Place } from "./session-types.ts";

const stateSchema = z.object({
  user: z.object({ id: z.string(), name: z.string() }),
  item: z.string().nullable().optional(),
});

export function placesOf(awareness: Awareness, me: Me): Place[] {
  const places: Place[] = [];
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
