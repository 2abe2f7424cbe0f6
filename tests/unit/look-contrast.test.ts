/**
 * Every pair of colours the look puts together, measured from the tokens themselves in both schemes.
 * Formula and limits: WCAG 2.2 (W3C Recommendation), "relative luminance", "contrast ratio", success criteria 1.4.3
 * (text 4.5:1) and 1.4.11 (parts of the interface 3:1).
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const css = readFileSync(new URL("../../app/look.css", import.meta.url), "utf8");

function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}

function tokens(scheme: "light" | "dark"): Map<string, string> {
  const found = new Map<string, string>();
  for (const [, name, light, dark] of css.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)) {
    if (name && light && dark) found.set(name, scheme === "light" ? light : dark);
  }
  return found;
}

describe("the contrast formula", () => {
  // WCAG 2.2 formula, worked for well-known pairs: #767676 is the lightest grey that passes on white, #777777 fails.
  it.each([
    ["#000000", "#ffffff", 21.0],
    ["#767676", "#ffffff", 4.542225],
    ["#777777", "#ffffff", 4.478089],
    ["#949494", "#ffffff", 3.03347],
    ["#595959", "#ffffff", 7.004729],
    ["#ff0000", "#ffffff", 3.998477],
    ["#0000ff", "#ffffff", 8.592471],
    ["#ffff00", "#000000", 19.556],
    ["#ffffff", "#ffffff", 1.0],
  ])("gives the published ratio of %s on %s", (fg, bg, ratio) => {
    expect(contrast(fg, bg)).toBeCloseTo(ratio, 4);
  });
});

const GROUNDS = ["paper", "raised", "wash"];
const TINTS = ["push", "pull", "trunk", "legs", "sides"];
const WORDS = ["ink", "steel", "quiet", "must", "look", "info", "good"];
const TEXT_PAIRS: [string, string][] = [
  ...WORDS.flatMap((word) => GROUNDS.map((ground): [string, string] => [word, ground])),
  ...["ink", "steel", "quiet", "must"].flatMap((word) => TINTS.map((tint): [string, string] => [word, tint])),
  ...["must", "look", "info"].flatMap((level): [string, string][] => [
    [level, `${level}-wash`],
    ["ink", `${level}-wash`],
    ["quiet", `${level}-wash`],
  ]),
  ["paper", "ink"],
  ["paper", "steel"],
];
const TIDES = ["tide-push", "tide-pull", "tide-trunk", "tide-legs"];
const PART_PAIRS: [string, string][] = ["edge", "rail", "focus", ...TIDES].flatMap((part) =>
  GROUNDS.map((ground): [string, string] => [part, ground]),
);

describe.each(["light", "dark"] as const)("the %s scheme", (scheme) => {
  const colours = tokens(scheme);
  const ratio = (a: string, b: string) => contrast(colours.get(a) ?? "#000000", colours.get(b) ?? "#000000");

  it("defines every colour that is measured", () => {
    for (const name of new Set([...TEXT_PAIRS, ...PART_PAIRS].flat())) expect(colours.has(name), name).toBe(true);
  });
  it.each(TEXT_PAIRS)("text: %s on %s is at least 4.5:1", (word, ground) => {
    expect(ratio(word, ground)).toBeGreaterThanOrEqual(4.5);
  });
  it.each(PART_PAIRS)("part: %s on %s is at least 3:1", (part, ground) => {
    expect(ratio(part, ground)).toBeGreaterThanOrEqual(3);
  });
});
