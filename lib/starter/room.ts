/**
 * A first room to begin with, so that the first plan can be written on the first day. Its springs are an example, of the
 * size and unevenness that readings of a luggage scale give (invented; no maker's figures): the studio measures its own.
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
