/** What a device is set to for its room: how far off it is read, sound, vibration, keys, how much longer one touch makes. */
import type { ScreenView } from "#lib/protocol/line-wire.ts";
import type { KeyChoice } from "./keys.ts";

export interface FloorSettings {
  /** Metres from the screen to whoever reads it. */
  readonly distanceM: number;
  readonly extendSeconds: number;
  readonly sound: boolean;
  readonly vibration: boolean;
  readonly keys: KeyChoice;
  /** Leads classes, or what it shows of those that another screen leads. */
  readonly screen: ScreenView;
}
export const DISTANCES_M = [1, 1.5, 2, 3, 4, 5, 6, 8] as const;
export const EXTEND_SECONDS = [5, 10, 15, 20, 30] as const;

export const FLOOR_SETTINGS: FloorSettings = {
  distanceM: 4,
  extendSeconds: 15,
  sound: false,
  vibration: false,
  keys: {},
  screen: "lead",
};
