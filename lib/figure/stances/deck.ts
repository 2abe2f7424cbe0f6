/** What a body lies, sits, kneels or stands on, and where along it. */
import { heightOf, type Surface } from "../space/machine.ts";
import type { PoseStage } from "./stage.ts";

export interface Deck {
  readonly surface: Surface;
  readonly top: number;
  /** A place on it, metres from its end at the person's front, for one who faces front or back. */
  place(local: number): number;
}

const LENGTH = 1.3;
/** Where people on the floor are: before the front end, clear of the platform. */
const FLOOR_BEGINS = -2.3;

export function deckOf(stage: PoseStage): Deck {
  const along = (local: number) => (stage.facing === "back" ? LENGTH - local : local);
  if (stage.move.station === "floor") {
    return { surface: "floor", top: 0, place: (local) => FLOOR_BEGINS + along(local) };
  }
  const top = heightOf("carriage");
  return { surface: "carriage", top, place: (local) => stage.travel + stage.shift + along(local) };
}
