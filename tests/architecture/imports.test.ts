/** The structure as a law: who may import whom, what `lib/` may not touch, how long a file may be. */
import { describe, expect, test } from "vitest";
import { type Layer, layerOf, sources } from "./sources.ts";

const MAY_IMPORT: Record<Layer, readonly Layer[]> = {
  lib: ["lib"],
  db: ["db", "lib"],
  server: ["server", "db", "lib"],
  app: ["app", "server", "lib"],
  seed: ["seed", "server", "db", "lib"],
};
/** The composition root alone may reach for the demo's seed. */
const SEED_DOOR = new Set(["server/main.ts"]);
const MAX_LINES = 320;

describe("structure", () => {
  test("imports point only the way the map says", () => {
    const wrong = sources.flatMap((s) =>
      s.imports.flatMap(({ to, typeOnly }) => {
        const layer = to && layerOf(to);
        if (!layer || MAY_IMPORT[s.layer].includes(layer)) return [];
        if (typeOnly && s.layer === "app") return [];
        if (layer === "seed" && SEED_DOOR.has(s.path)) return [];
        return [`${s.path} imports ${to}`];
      }),
    );
    expect(wrong).toEqual([]);
  });

  test("a schema that a page may hold is written with zod/mini: the other one cannot be taken apart", () => {
    const wrong = sources.filter(
      ({ layer, imports }) => (layer === "app" || layer === "lib") && imports.some(({ from }) => from === "zod"),
    );
    expect(wrong.map(({ path }) => path)).toEqual([]);
  });

  test("lib knows no clock, no chance, no machine", () => {
    const forbidden =
      /\bDate\.now\(|\bMath\.random\(|\bcrypto\.randomUUID|\bprocess\.|from "node:|from "react|from "next/;
    const pure = sources.filter((s) => s.layer === "lib" && !s.path.startsWith("lib/client/"));
    expect(pure.filter((s) => forbidden.test(stripComments(s.text))).map((s) => s.path)).toEqual([]);
  });

  test("only server/base/env.ts reads the environment", () => {
    const readers = sources.filter(
      (s) => s.path !== "server/base/env.ts" && /\bprocess\.env\b/.test(stripComments(s.text)),
    );
    expect(readers.map((s) => s.path)).toEqual([]);
  });

  test("SQL stands only in db", () => {
    const sql = sources.filter(
      (s) => s.layer !== "db" && /\braw\.prepare\(|from "drizzle-orm|from "better-sqlite3"/.test(stripComments(s.text)),
    );
    expect(sql.map((s) => s.path)).toEqual([]);
  });

  test("a page asks the server through app/_parts/send.ts alone", () => {
    const asks = sources.filter(
      (s) => s.layer === "app" && s.path !== "app/_parts/send.ts" && OWN_FETCH.test(stripComments(s.text)),
    );
    expect(asks.map((s) => s.path)).toEqual([]);
  });

  test(`no file is longer than ${MAX_LINES} lines`, () => {
    const long = sources.filter((s) => !s.path.startsWith("seed/") && s.text.split("\n").length > MAX_LINES);
    expect(long.map((s) => `${s.path}: ${s.text.split("\n").length}`)).toEqual([]);
  });
});

/** The platform's own `fetch`; a method of that name (`part.fetch()`, `private async fetch()`) is another thing. */
const OWN_FETCH = /(?<![.\w]|async )fetch\(|\b(?:window|globalThis|self)\.fetch\(/;
const stripComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/.*$/gm, "");
