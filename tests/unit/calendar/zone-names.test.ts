/** Time zones by name, among those of the IANA database that the platform knows. */
import { expect, test } from "vitest";
import { zoneNamed, zonesInOrder, zoneWords } from "#lib/calendar/zone-names.ts";

const ALL = Intl.supportedValuesOf("timeZone");

test("by region and then by city, each once", () => {
  expect(
    zonesInOrder(["Europe/Rome", "UTC", "America/New_York", "Europe/Lisbon", "America/Argentina/Salta", "UTC"]),
  ).toEqual(["America/Argentina/Salta", "America/New_York", "Europe/Lisbon", "Europe/Rome", "UTC"]);
  const sorted = zonesInOrder([...ALL].reverse());
  expect(sorted.length).toBe(ALL.length);
  const regions = sorted.map((zone) => zone.split("/")[0]);
  expect(regions.filter((region, i) => region !== regions[i - 1]).length).toBe(new Set(regions).size);
});

test("every zone is found by its name as it is read, and by its city where that is one alone", () => {
  for (const zone of ALL) expect(zoneNamed(zoneWords(zone), ALL)).toBe(zone);
  expect(zoneNamed(" new york ", ALL)).toBe("America/New_York");
  expect(zoneNamed("EUROPE / lisbon", ALL)).toBe("Europe/Lisbon");
  expect(zoneNamed("Lisbo", ALL)).toBeUndefined();
  expect(zoneNamed("", ALL)).toBeUndefined();
});
