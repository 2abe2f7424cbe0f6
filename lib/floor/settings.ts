/** A device's settings for its room: reading distance, sound, vibration, keys, seconds added by one touch. */
import type { ScreenView } from "#lib/protocol/line-wire.ts";
import type { KeyChoice } from "./keys.ts";

export interface FloorSettings {
  /** Metres from the screen to whoever reads it. */
  readonly distanceM: number;
  readonly extendSeconds: number;
  readonly sound: boolean;
  readonly vibration: boolean;
  /** The plate of a change is less bright, for a room with little light. */
  readonly dim: boolean;
  readonly keys: KeyChoice;
  /** Whether it leads classes, or which view it shows of a class that another screen leads. */
  readonly screen: ScreenView;
}
export const DISTANCES_M = [1, 1.5, 2, 3, 4, 5, 6, 8] as const;
export const EXTEND_SECONDS = [5, 10, 15, 20, 30] as const;

export const FLOOR_SETTINGS: FloorSettings = {
  distanceM: 4,
  extendSeconds: 15,
  sound: false,
  vibration: false,
  dim: false,
  keys: {},
  screen: "lead",
};
