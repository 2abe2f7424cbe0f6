/** Springs on a screen: the studio's words and a line's weight, never a colour. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { Coils } from "#app/_parts/coils/coil.tsx";
import type { Equipment, Spring } from "#lib/plan/schema.ts";
import { filesUnder, ROOT } from "../architecture/sources.ts";

const spring = (id: string, label: string, stiffnessNPerMm: number): Spring => ({
  ...{ id, label, count: 2, preloadN: 10, stiffnessNPerMm },
});
const equipment: Equipment = {
  name: "Machines",
  carriageTravelMm: 1000,
  springs: [spring("s1", "light", 0.1), spring("s2", "red", 0.2), spring("s3", "heavy", 0.4)],
};
const drawn = (id: string) => renderToStaticMarkup(createElement(Coils, { equipment, springs: { [id]: 1 } }));
const strokes = (markup: string) => [...markup.matchAll(/stroke-width="([\d.]+)"/g)].map(([, width]) => Number(width));
const COLOUR = /#[0-9a-f]{3,8}\b|rgb|hsl|oklch|var\(--(?!space)[a-z]/i;

describe("[INV-18] a spring", () => {
  test("is drawn with a line that is the wider the stiffer it is", () => {
    const [light, middle, heavy] = ["s1", "s2", "s3"].map((id) => strokes(drawn(id))[0] ?? 0) as [
      number,
      number,
      number,
    ];
    expect(light).toBeLessThan(middle);
    expect(middle).toBeLessThan(heavy);
  });

  test("differs from another in nothing else but the studio's own word, whatever that word is", () => {
    const bare = (id: string, label: string) =>
      drawn(id)
        .replace(/stroke-width="[\d.]+"/g, "")
        .replaceAll(label, "");
    expect(bare("s2", "red")).toBe(bare("s1", "light"));
    expect(drawn("s2")).toContain("red");
  });

  test("has no colour of its own in any style sheet: coils take the colour of the words around them", () => {
    const sheets = [...filesUnder(join(ROOT, "app"), /coil.*\.css$/)];
    expect(sheets.length).toBeGreaterThan(0);
    for (const sheet of sheets) {
      const colours = readFileSync(sheet, "utf8").match(/^\s*(color|fill|stroke|background[a-z-]*):.*$/gm) ?? [];
      expect(colours.filter((line) => COLOUR.test(line))).toEqual([]);
    }
    const byName = [...filesUnder(join(ROOT, "app"), /\.css$/)].filter((file) =>
      /\[data-spring[=\]]|\.spring-[\w-]+\s*\{[^}]*colou?r/.test(readFileSync(file, "utf8")),
    );
    expect(byName).toEqual([]);
  });
});
