/** Times of day on the floor: 18:03 and 18:03:07, by the device's own clock and zone. `at` in ms since the epoch. */
const time = (at: number, seconds: boolean): string =>
  new Date(at).toLocaleTimeString("en-GB", {
    hour: "2-digit",
    minute: "2-digit",
    ...(seconds ? { second: "2-digit" } : {}),
  });

export const hourMinute = (at: number): string => time(at, false);
export const hourMinuteSecond = (at: number): string => time(at, true);
