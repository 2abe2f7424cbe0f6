/**
 * Whether the floor can be read at 4 m: worked out from the capitals of the shipped font file, against published
 * figures: FAA human factors design standard and ISO 9241-303 (20 arcmin for critical text, 16 at the least), and WCAG
 * 2.2 (7:1, AAA). Assumption about the screen: a CSS pixel is 1/96 inch (CSS Values and Units), so that 1280 x 800 is a
 * panel of about 34 x 21 cm. On a smaller panel of the same pixels the distance shrinks in proportion.
 */
import { readFileSync } from "node:fs";
import { inflateSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import {
  arcMinutes,
  CAP_RATIO,
  capArcMinutes,
  MINUTES_SIZE,
  NAME_SIZES,
  readableToM,
  SECONDS_SIZE,
  tooSmallWords,
  typeSizes,
} from "#lib/floor/legibility.ts";
import { DISTANCES_M } from "#lib/floor/settings.ts";
import contrast from "#tests/fixtures/wcag-contrast.json" with { type: "json" };

const FONT =
  "node_modules/@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff";

/** One table of a WOFF 1.0 file: W3C WOFF File Format 1.0, sections 3 and 4. */
function fontTable(file: Buffer, tag: string): Buffer {
  const count = file.readUInt16BE(12);
  for (let n = 0; n < count; n += 1) {
    const at = 44 + n * 20;
    if (file.toString("latin1", at, at + 4) !== tag) continue;
    const [offset, packed, length] = [4, 8, 12].map((skip) => file.readUInt32BE(at + skip)) as [number, number, number];
    const data = file.subarray(offset, offset + packed);
    return packed < length ? inflateSync(data) : data;
  }
  throw new Error(`the font has no table ${tag}`);
}

/** Cap height as a share of the font size: OS/2 sCapHeight (version 2 and up) over head unitsPerEm. */
function capRatio(): number {
  const file = readFileSync(FONT);
  const os2 = fontTable(file, "OS/2");
  expect(os2.readUInt16BE(0)).toBeGreaterThanOrEqual(2);
  return os2.readInt16BE(88) / fontTable(file, "head").readUInt16BE(18);
}

describe("angles", () => {
  // Published table: capital height that fills 20 arcmin at 2, 3, 4, 5 m is 11.6, 17.5, 23.3, 29.1 mm.
  test.each([
    [11.6, 2000],
    [17.5, 3000],
    [23.3, 4000],
    [29.1, 5000],
  ])("%d mm at %d mm is 20 arcmin", (height, distance) => expect(arcMinutes(height, distance)).toBeCloseTo(20, 0));

  test("NUREG-0700: height = 6.283 x distance x angle / 21600", () => {
    expect(arcMinutes((6.283 * 4000 * 20) / 21600, 4000)).toBeCloseTo(20, 2);
  });
});

describe("at 4 m", () => {
  const ratio = capRatio();

  test("the font's cap height is read from its file and lies between 0.6 and 0.75 of its size", () => {
    expect(ratio).toBeGreaterThan(0.6);
    expect(ratio).toBeLessThan(0.75);
  });

  test.each(NAME_SIZES.map((size) => [size]))("a move's name of %d px fills 20 arcmin or more", (size) => {
    expect(capArcMinutes(size, ratio, 4000)).toBeGreaterThanOrEqual(20);
  });

  test("the seconds fill more than 28 arcmin, as figures that change should", () => {
    expect(capArcMinutes(SECONDS_SIZE, ratio, 4000)).toBeGreaterThan(28);
    expect(capArcMinutes(MINUTES_SIZE, ratio, 4000)).toBeGreaterThanOrEqual(20);
  });

  test("the style sheet draws the seconds at those sizes, where the screen has room", () => {
    const css = readFileSync("app/floor/_class/live-class.module.css", "utf8");
    expect(css).toMatch(/font-size: min\(max\(var\(--seconds\)/);
    expect(css).toMatch(/font-size: min\(max\(var\(--minutes\)/);
    expect(typeSizes(4)).toMatchObject({ seconds: SECONDS_SIZE, minutes: MINUTES_SIZE });
  });
});

describe("at the distance that a device is set to", () => {
  test("the cap height used is the font's own", () => expect(CAP_RATIO).toBeCloseTo(capRatio(), 3));

  test.each(DISTANCES_M.map((metres) => [metres]))("%d m: name 20 arcmin, seconds 28, minutes 17", (metres) => {
    const { name, nameFrom, seconds, minutes } = typeSizes(metres);
    expect(capArcMinutes(nameFrom, CAP_RATIO, metres * 1000)).toBeCloseTo(20, 6);
    expect(name.some((size) => size >= nameFrom)).toBe(true);
    expect(name).toEqual([...name].sort((a, b) => b - a));
    expect(capArcMinutes(seconds, CAP_RATIO, metres * 1000)).toBeGreaterThan(28);
    expect(capArcMinutes(minutes, CAP_RATIO, metres * 1000)).toBeGreaterThan(17);
  });

  test("a wall can be read from farther than a tablet, a tablet from farther than a phone; the sentence says how far", () => {
    const [wall, tablet, hand] = [readableToM(1920, 1080), readableToM(1280, 800), readableToM(390, 844)];
    expect(wall).toBeGreaterThan(tablet);
    expect(tablet).toBeGreaterThan(hand);
    expect(tooSmallWords(4, 1280, 800)).toBeNull();
    expect(tooSmallWords(8, 390, 844)).toContain(`from about ${hand} m`);
  });
});

/** WCAG 2.2, "relative luminance" and "contrast ratio". */
function ratioOf(fg: string, bg: string): number {
  const luminance = (hex: string) => {
    const [r, g, b] = [1, 3, 5].map((at) => {
      const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const [a, b] = [luminance(fg), luminance(bg)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

describe("contrast", () => {
  test.each(contrast.pairs)("the formula gives the published ratio of $fg on $bg", ({ fg, bg, ratio }) => {
    expect(ratioOf(fg, bg)).toBeCloseTo(ratio, 3);
  });

  test("every text colour of the floor has 7:1 or more on every ground it may stand on", () => {
    const css = readFileSync("app/floor/floor.css", "utf8");
    const declared = (text: string) =>
      new Map([...text.matchAll(/(--floor-[a-z-]+):\s*(#[0-9a-f]{6})/g)].map((m) => [m[1], m[2]]));
    const colours = declared(css);
    const hex = (name: string) => colours.get(`--floor-${name}`) ?? "";
    for (const ground of ["ground", "raised"]) {
      for (const words of ["chalk", "soft", "say", "warn"]) {
        expect([words, ground, ratioOf(hex(words), hex(ground)) >= 7]).toEqual([words, ground, true]);
      }
    }
    expect(ratioOf(hex("ground"), hex("chalk"))).toBeGreaterThanOrEqual(7);
    expect(ratioOf(hex("ground"), hex("say"))).toBeGreaterThanOrEqual(7);
    // The plate of a change, and the tab on it; in a dim room too, where later declarations count.
    const bright = new Map([...colours, ...declared(css.slice(0, css.indexOf(":root[data-dim]")))]);
    for (const plate of [bright, colours]) {
      const of = (name: string) => plate.get(`--floor-${name}`) ?? "";
      for (const words of ["ink", "ink-soft", "ground"]) {
        expect([words, ratioOf(of(words), of("plate")) >= 7]).toEqual([words, true]);
      }
    }
    expect(bright.get("--floor-plate")).not.toBe(colours.get("--floor-plate"));
  });
});
