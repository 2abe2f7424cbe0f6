/** Time zones by the names that people read and type: "America/New York". Pure. */

export const zoneWords = (zone: string): string => zone.replaceAll("_", " ");

/** Each once, by region and then by city. */
export const zonesInOrder = (zones: Iterable<string>): string[] =>
  [...new Set(zones)].sort((a, b) => (sortKey(a) < sortKey(b) ? -1 : 1));

/** A region before what begins with its name. */
const sortKey = (zone: string): string => zoneWords(zone).toLowerCase().replaceAll("/", "\u0000");

const folded = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, " ")
    .replace(/ ?\/ ?/g, "/");

/** The zone of that name, or the only one of a city of that name; undefined where there is none. Case and underscores do not count. */
export function zoneNamed(text: string, zones: readonly string[]): string | undefined {
  const asked = folded(text);
  if (asked === "") return undefined;
  const ofCity = zones.filter((zone) => folded(zone).endsWith(`/${asked}`));
  return zones.find((zone) => folded(zone) === asked) ?? (ofCity.length === 1 ? ofCity[0] : undefined);
}
