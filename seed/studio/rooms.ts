/**
 * Two rooms of machines. Springs have the studio's own names. Stiffness and preload are invented, but as uneven as real
 * readings of a luggage scale. Newtons, millimetres.
 */
import type { Equipment } from "#lib/plan/schema.ts";

export interface SeedRoom {
  readonly key: "harbour" | "loft";
  readonly name: string;
  readonly equipment: Equipment;
}

export const ROOMS: readonly SeedRoom[] = [
  {
    key: "harbour",
    name: "Harbour room",
    equipment: {
      name: "Harbour room, ten machines",
      carriageTravelMm: 900,
      springs: [
        { id: "light", label: "light", count: 4, stiffnessNPerMm: 0.121, preloadN: 8.6 },
        { id: "middle", label: "middle", count: 2, stiffnessNPerMm: 0.214, preloadN: 12.3 },
        { id: "firm", label: "firm", count: 2, stiffnessNPerMm: 0.338, preloadN: 17.1 },
        { id: "strong", label: "strong", count: 1, stiffnessNPerMm: 0.523, preloadN: 22.4 },
      ],
    },
  },
  {
    key: "loft",
    name: "Loft",
    equipment: {
      name: "Loft, twelve machines",
      carriageTravelMm: 820,
      springs: [
        { id: "light", label: "light", count: 3, stiffnessNPerMm: 0.133, preloadN: 7.9 },
        { id: "middle", label: "middle", count: 2, stiffnessNPerMm: 0.207, preloadN: 13.0 },
        { id: "firm", label: "firm", count: 1, stiffnessNPerMm: 0.351, preloadN: 16.4 },
        { id: "strong", label: "strong", count: 1, stiffnessNPerMm: 0.498, preloadN: 24.2 },
      ],
    },
  },
];
