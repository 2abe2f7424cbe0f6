/** The QR code of a pairing code, read back by another implementation of the standard. */
import jsQR from "jsqr";
import { expect, test } from "vitest";
import { newPairingCode } from "#server/auth/pairing-code.ts";
import { pairingLink } from "#server/devices/pairing-link.ts";

/** As a camera sees it: the path's squares, eight pixels each, dark on white. */
function photographed({ side, path }: ReturnType<typeof pairingLink>["squares"]): string | undefined {
  const width = side * 8;
  const pixels = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g))
    for (let i = 0; i < 64; i++) {
      const at = (Number(y) * 8 + Math.floor(i / 8)) * width + Number(x) * 8 + (i % 8);
      pixels.fill(0, at * 4, at * 4 + 3);
    }
  return jsQR(pixels, width, width)?.data;
}

test("what a camera reads is the floor's address with the code behind the #", () => {
  for (const origin of ["https://plans.tholepin.example", "http://192.168.1.20:4310", "http://localhost:4310"]) {
    const code = newPairingCode();
    const made = pairingLink(origin, code);
    expect(made.link).toBe(`${origin}/floor#pair=${code}`);
    expect(photographed(made.squares)).toBe(made.link);
  }
});

test("an address of this machine alone is said to be one", () => {
  const only = (origin: string) => pairingLink(origin, "ABCD2345").onlyHere;
  expect(["http://localhost:4310", "http://127.0.0.1:4310", "http://[::1]:4310"].map(only)).toEqual([true, true, true]);
  expect(["https://plans.tholepin.example", "http://192.168.1.20"].map(only)).toEqual([false, false]);
});
