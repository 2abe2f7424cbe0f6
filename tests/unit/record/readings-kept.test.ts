/** The record says of scale readings whether a spring's values were taken from them. */
import { expect, test } from "vitest";
import { readingsKept } from "#lib/record/readings-kept.ts";

test.each([
  [{ spring: { label: "light" }, readings: 5, use: true }, "took the values of “light” in Loft from scale readings"],
  [
    { spring: { label: "light" }, readings: 5, use: false },
    "saved scale readings of “light” in Loft; its values stayed as they were",
  ],
  [
    { spring: { label: "light" }, readings: 0, use: false },
    "removed the scale readings of “light” in Loft; its values stayed as they were",
  ],
])("%j", (data, says) => expect(readingsKept(data, "Loft")).toBe(says));
