/**
 * The shades as the style sheet draws them, measured in both schemes. Formula and limit: WCAG 2.2, "relative luminance",
 * "contrast ratio", success criterion 1.4.11 (parts of a graphic 3:1). Mixing: CSS Color 5, color-mix() in srgb.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const read = (path: string) => readFileSync(new URL(`../../../app/${path}`, import.meta.url), "utf8");
const look = read("look.css");
const sheet = read("_body-map/body-map.module.css");
const hatches = read("_body-map/hatches.tsx");

type Rgb = readonly number[];
function token(name: string, scheme: "light" | "dark"): Rgb {
  const [, light = "", dark = ""] =
    new RegExp(`--${name}: light-dark\\((#[0-9a-f]{6}), (#[0-9a-f]{6})\\)`).exec(look) ?? [];
  const hex = scheme === "light" ? light : dark;
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
}
const mixed = (a: Rgb, b: Rgb, part: number): Rgb => a.map((c, i) => c * part + (b[i] ?? 0) * (1 - part));
function luminance(rgb: Rgb): number {
  const [r = 0, g = 0, b = 0] = rgb.map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: Rgb, b: Rgb): number {
  const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}

/** Parts of ink, shades 1 to 4. */
const parts = [1, 2, 3, 4].map((n) => Number(new RegExp(`--shade-${n}: (\\d+)%`).exec(sheet)?.[1]) / 100);
/** Part of shades 1 to 3 that the lines cover. */
const covered = [...hatches.matchAll(/[123]: \{ apart: ([\d.]+), thick: ([\d.]+) \}/g)].map(
  ([, apart, thick]) => Number(thick) / Number(apart),
);

describe.each(["light", "dark"] as const)("%s", (scheme) => {
  const [ink, ground, edge] = [token("ink", scheme), token("raised", scheme), token("edge", scheme)];

  it("the strongest shade stands out from the body around it, and from the next shade beyond that", () => {
    const tones = parts.map((part) => mixed(ink, ground, part));
    const [, , third = [], fourth = []] = tones;
    expect(contrast(fourth, ground)).toBeGreaterThanOrEqual(3);
    expect(contrast(fourth, third)).toBeGreaterThanOrEqual(3);
  });

  it("every shaded part has a line around it that stands out from the body", () => {
    expect(contrast(edge, ground)).toBeGreaterThanOrEqual(3);
  });

  it("each shade, tone and hatch together, holds more ink than the one before", () => {
    const inks = parts.map((part, i) => part + (1 - part) * (covered[i] ?? 0));
    expect(covered).toHaveLength(3);
    for (let i = 1; i < inks.length; i++) expect((inks[i] ?? 0) - (inks[i - 1] ?? 0)).toBeGreaterThan(0.15);
  });
});

it("a printer without tones, and an eye without colours, tell the shades by their hatch alone", () => {
  for (let i = 1; i < covered.length; i++) expect((covered[i] ?? 0) / (covered[i - 1] ?? 1)).toBeGreaterThan(1.5);
});
