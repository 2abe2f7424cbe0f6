/** The structure as a law: who may import whom, what `lib/` may not touch, how long a file may be. */
import { readdirSync, readFileSync } from "node:fs";
import { join, relative, resolve } from "node:path";
import { describe, expect, test } from "vitest";

const ROOT = resolve(import.meta.dirname, "../..");
const LAYERS = ["app", "server", "db", "lib", "seed"] as const;
type Layer = (typeof LAYERS)[number];
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

interface Source {
  readonly path: string;
  readonly layer: Layer;
  readonly text: string;
  readonly imports: readonly { readonly from: string; readonly typeOnly: boolean }[];
}

function* files(dir: string): Generator<string> {
  for (const entry of readdirSync(dir, { withFileTypes: true })) {
    const path = join(dir, entry.name);
    if (entry.isDirectory()) yield* files(path);
    else if (/\.tsx?$/.test(entry.name)) yield path;
  }
}

const IMPORT = /(?:^|\n)\s*(?:import|export)\s+(type\s+)?(?:[\w*{}\s,$]+?\sfrom\s+)?"([^"]+)"/g;

const sources: Source[] = LAYERS.flatMap((layer) =>
  [...files(join(ROOT, layer))].map((file) => {
    const text = readFileSync(file, "utf8");
    const path = relative(ROOT, file);
    const imports = [...text.matchAll(IMPORT)].map((m) => ({ from: m[2] as string, typeOnly: m[1] !== undefined }));
    return { path, layer, text, imports };
  }),
);

/** Path inside the project that an import names, or undefined for a package. */
function target(source: Source, from: string): string | undefined {
  if (from.startsWith("#")) return from.slice(1);
  if (from.startsWith(".")) return relative(ROOT, resolve(ROOT, source.path, "..", from));
  return undefined;
}
const layerOf = (path: string) => LAYERS.find((l) => path.startsWith(`${l}/`));

describe("structure", () => {
  test("imports point only the way the map says", () => {
    const wrong = sources.flatMap((s) =>
      s.imports.flatMap(({ from, typeOnly }) => {
        const to = target(s, from);
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

  test("client components import lib and app only", () => {
    const wrong = sources
      .filter((s) => s.layer === "app" && /^["']use client["']/m.test(s.text))
      .flatMap((s) =>
        s.imports.flatMap(({ from, typeOnly }) => {
          const to = target(s, from);
          return to && !typeOnly && (to.startsWith("server/") || to.startsWith("db/"))
            ? [`${s.path} imports ${to}`]
            : [];
        }),
      );
    expect(wrong).toEqual([]);
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

  test("no import cycles", () => {
    const graph = new Map(
      sources.map((s) => [s.path, s.imports.filter((i) => !i.typeOnly).flatMap((i) => target(s, i.from) ?? [])]),
    );
    expect(findCycle(graph)).toEqual([]);
  });

  test(`no file is longer than ${MAX_LINES} lines`, () => {
    const long = sources.filter((s) => !s.path.startsWith("seed/") && s.text.split("\n").length > MAX_LINES);
    expect(long.map((s) => `${s.path}: ${s.text.split("\n").length}`)).toEqual([]);
  });
});

/** The platform's own `fetch`; a method of that name (`part.fetch()`, `private async fetch()`) is another thing. */
const OWN_FETCH = /(?<![.\w]|async )fetch\(|\b(?:window|globalThis|self)\.fetch\(/;
const stripComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/(^|\s)\/\/.*$/gm, "");

function findCycle(graph: ReadonlyMap<string, readonly string[]>): string[] {
  const done = new Set<string>();
  const walk = (node: string, trail: string[]): string[] => {
    if (trail.includes(node)) return [...trail.slice(trail.indexOf(node)), node];
    if (done.has(node)) return [];
    for (const next of graph.get(node) ?? []) {
      const cycle = walk(next, [...trail, node]);
      if (cycle.length > 0) return cycle;
    }
    done.add(node);
    return [];
  };
  for (const node of graph.keys()) {
    const cycle = walk(node, []);
    if (cycle.length > 0) return cycle;
  }
  return [];
}
