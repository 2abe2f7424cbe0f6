/** The time of day at which a studio makes its backup until a manager sets one. Pure. */

/** The first minute of the hour over which studios are spread: half past three. */
const FROM_MINUTE = 3 * 60 + 30;
const SPREAD_MINUTES = 60;

/**
 * "03:47": always the same for one installation, and another for most, so that the studios of one machine do not all read their
 * databases at once. `installationId`: hexadecimal digits, of which the first eight count.
 */
export function ownBackupTime(installationId: string): string {
  const minute = FROM_MINUTE + (Number.parseInt(installationId.slice(0, 8), 16) % SPREAD_MINUTES);
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}
