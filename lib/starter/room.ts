/**
 * A first room, so that a studio can write a plan on its first day. Its springs are an invented example with figures like
 * those a luggage scale gives, not a maker's: the studio measures its own.
 */
import type { Equipment } from "#lib/plan/schema.ts";

export const STARTER_ROOM_NAME = "Room 1";

export const STARTER_EQUIPMENT: Equipment = {
  name: "Example machine: measure your own springs",
  carriageTravelMm: 900,
  springs: [
    { id: "light", label: "light", count: 4, stiffnessNPerMm: 0.12, preloadN: 9 },
    { id: "middle", label: "middle", count: 2, stiffnessNPerMm: 0.21, preloadN: 12 },
    { id: "firm", label: "firm", count: 2, stiffnessNPerMm: 0.34, preloadN: 17 },
    { id: "strong", label: "strong", count: 1, stiffnessNPerMm: 0.52, preloadN: 22 },
  ],
};
