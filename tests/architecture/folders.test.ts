/** Folders and files without circles, and what each room of `app/` may know. Types and `import()` count. */
import { dirname } from "node:path";
import { describe, expect, test } from "vitest";
import { circlesIn } from "./circles.ts";
import { type Source, sourceAt, sources } from "./sources.ts";

const known = (source: Source) => source.imports.flatMap(({ to }) => (to && sourceAt.has(to) ? [to] : []));

/** Which of `nameOf` need which others. */
function needsBy(nameOf: (path: string) => string): Map<string, Set<string>> {
  const needs = new Map<string, Set<string>>();
  for (const source of sources) {
    const name = nameOf(source.path);
    const others = needs.get(name) ?? new Set();
    for (const to of known(source)) if (nameOf(to) !== name) others.add(nameOf(to));
    needs.set(name, others);
  }
  return needs;
}

/** The room of a file of `app/`: "_plan", "desk", "floor/_line"; "" right under `app/`. */
function roomOf(path: string): string {
  const [, first = "", second = ""] = path.split("/");
  if (!path.slice("app/".length).includes("/")) return "";
  return first === "floor" && second.startsWith("_") ? `floor/${second}` : first;
}

const SHARED = new Set(["_parts", "_body-map", "_session"]);
/** The plan page puts the features together, the frame holds a page, `_month` has a document of its own. */
const FEATURES = [
  ...["_rail", "_band", "_load", "_taken-out", "_fit", "_order", "_paste", "_margin", "_lanes", "_read", "_rate"],
  ...["_rehearsal", "_script", "_draft", "_marks", "_rounds", "_propose"],
];
const FLOOR = [
  ...["floor/_parts", "floor/_change", "floor/_line", "floor/_class", "floor/_ready", "floor/_rehearsal"],
  "floor/_page",
];

/** What `room` may know besides itself and `lib`; null: everything. */
function mayKnow(room: string): ReadonlySet<string> | null {
  if (room === "_parts") return new Set();
  if (room === "_session" || room === "_shell" || room === "_body-map") return new Set(["_parts"]);
  if (room === "_month") return new Set(["_parts", "_body-map"]);
  if (FEATURES.includes(room)) return SHARED;
  const floor = FLOOR.indexOf(room);
  return floor < 0 ? null : new Set(["_parts", "", ...FLOOR.slice(0, floor)]);
}

describe("rooms", () => {
  test("no file needs itself in a circle", () => {
    expect(circlesIn(needsBy((path) => path))).toEqual([]);
  });

  test("no folder needs itself in a circle", () => {
    expect(circlesIn(needsBy(dirname))).toEqual([]);
  });

  test("every folder of app/ that begins with _ is a room that is named here", () => {
    const rooms = new Set(sources.filter(({ layer }) => layer === "app").map(({ path }) => roomOf(path)));
    const named = new Set([...SHARED, "_shell", "_month", "_plan", ...FEATURES, ...FLOOR]);
    expect([...rooms].filter((room) => room.includes("_") && !named.has(room))).toEqual([]);
  });

  test("a feature knows the session and the shared parts, not another feature and not the page", () => {
    const wrong = sources
      .filter(({ layer }) => layer === "app")
      .flatMap((source) => {
        const room = roomOf(source.path);
        const allowed = mayKnow(room);
        if (!allowed) return [];
        const rooms = known(source).filter((to) => to.startsWith("app/"));
        return rooms
          .filter((to) => roomOf(to) !== room && !allowed.has(roomOf(to)))
          .map((to) => `${source.path} needs ${to}`);
      });
    expect(wrong).toEqual([]);
  });
});

/** Every file that the program of `entries` is made of: types are left out, since nothing of them runs. */
function reachedFrom(entries: readonly Source[]): Map<string, string> {
  const cameFrom = new Map(entries.map(({ path }) => [path, path]));
  const open = [...entries];
  for (let source = open.pop(); source; source = open.pop()) {
    for (const { to, typeOnly } of source.imports) {
      const next = to && !typeOnly ? sourceAt.get(to) : undefined;
      if (!next || cameFrom.has(next.path)) continue;
      cameFrom.set(next.path, source.path);
      open.push(next);
    }
  }
  return cameFrom;
}

describe("what a browser runs", () => {
  const isClient = ({ layer, text }: Source) => layer === "app" && /^["']use client["']/m.test(text);
  const floor = () => sources.filter(({ path }) => path === "app/floor/_page/entry.tsx");

  test("no file that a page reaches belongs to server, db or seed, or imports from Node", () => {
    const reached = reachedFrom([...sources.filter(isClient), ...floor()]);
    const wrong = [...reached].filter(([path]) => {
      const source = sourceAt.get(path);
      return /^(server|db|seed)\//.test(path) || source?.imports.some(({ from }) => from.startsWith("node:"));
    });
    expect(wrong.map(([path, by]) => `${path}, by ${by}`)).toEqual([]);
    // The check looks at something: pages reach most of what is in lib.
    expect(reached.has("lib/plan/schema.ts")).toBe(true);
  });

  test("nothing that the floor reaches imports from the pages' framework", () => {
    const reached = reachedFrom(floor());
    const wrong = [...reached].filter(([path]) =>
      sourceAt.get(path)?.imports.some(({ from, typeOnly }) => !typeOnly && /^next(\/|$)/.test(from)),
    );
    expect(wrong.map(([path, by]) => `${path}, by ${by}`)).toEqual([]);
    expect(reached.size).toBeGreaterThan(50);
  });
});
