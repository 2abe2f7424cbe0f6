/** The guides say what is there: every path they name exists, every invariant is guarded by the test named beside it. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { describe, expect, test } from "vitest";
import { filesUnder, LAYERS, ROOT } from "./sources.ts";

const GUIDES = [
  join(ROOT, "README.md"),
  join(ROOT, "DEVELOPERS.md"),
  ...[...LAYERS, "tests"].flatMap((dir) => [...filesUnder(join(ROOT, dir), /^README\.md$/)]),
];
/** In backticks, with a folder or a known ending: `lib/plan`, `fit/`, `session.ts`. */
const NAMED = /`([\w.@[\]*{},-]+(?:\/[\w.@[\]*{},-]+)*\/?)`/g;
const ENDING = /\.(tsx?|mjs|css|md|json|sql)$/;
/** Made by a build, a command or the person who runs it. */
const MADE = /^(\.next|dist|node_modules|data|test-results)\b/;

const tops = new Set([...LAYERS, "tests", ".ci"]);
/** Whether a word in backticks is meant as a path of this project. */
const isPath = (word: string) =>
  !MADE.test(word) &&
  !word.startsWith("@") &&
  (tops.has(word.split("/")[0] ?? "") ? word.includes("/") : ENDING.test(word));

const everyName = new Set(
  [...LAYERS, "tests"].flatMap((dir) => [...filesUnder(join(ROOT, dir), /./)]).map((path) => relative(ROOT, path)),
);
const ends = (path: string) => [...everyName].some((name) => name === path || name.endsWith(`/${path}`));

/** `a/{b,c}.ts` as two paths. */
function alternatives(path: string): string[] {
  const braces = /\{([^}]*)\}/.exec(path);
  if (!braces) return [path];
  return (braces[1] ?? "").split(",").map((one) => path.replace(braces[0], one));
}

function isThere(guide: string, path: string): boolean {
  if (path.includes("*")) {
    const pattern = new RegExp(
      `^${path
        .split("*")
        .map((part) => part.replace(/[.[\]]/g, "\\$&"))
        .join("[^/]*")}$`,
    );
    return [...everyName].some((name) => pattern.test(name));
  }
  return [ROOT, dirname(guide)].some((from) => existsSync(join(from, path))) || (ENDING.test(path) && ends(path));
}

describe("guides", () => {
  test.each(GUIDES.map((guide) => [relative(ROOT, guide), guide]))("%s names only paths that exist", (_, guide) => {
    const words = [...readFileSync(guide, "utf8").matchAll(NAMED)].map(([, word]) => word ?? "");
    const dead = words.filter(isPath).filter((path) => !alternatives(path).every((one) => isThere(guide, one)));
    expect(dead).toEqual([]);
  });

  test("every folder of the program that holds more than one file has its own guide", () => {
    const guided = (dir: string): boolean =>
      existsSync(join(ROOT, dir, "README.md")) || (dir.includes("/") && guided(dirname(dir)));
    const folders = LAYERS.flatMap((layer) =>
      readdirSync(join(ROOT, layer), { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .map((entry) => `${layer}/${entry.name}`),
    );
    expect(folders.filter((dir) => !guided(dir))).toEqual([]);
  });
});

describe("invariants", () => {
  const table = readFileSync(join(ROOT, "DEVELOPERS.md"), "utf8");
  /** `| INV-01 | what holds | tests/... |` */
  const rows = [...table.matchAll(/^\| (INV-\d\d) \|.*\|([^|]*)\|$/gm)].map(([, id = "", tests = ""]) => ({
    id,
    tests: [...tests.matchAll(/`([^`]+)`/g)].map(([, path = ""]) => path),
  }));

  test("are numbered once each, from 1", () => {
    const numbers = rows.map(({ id }) => id);
    expect(numbers).toEqual(numbers.map((_, at) => `INV-${String(at + 1).padStart(2, "0")}`));
    expect(numbers.length).toBeGreaterThan(20);
  });

  test.each(rows.map(({ id, tests }) => [id, tests] as const))(
    "%s is guarded by the tests beside it, which quote it",
    (id, tests) => {
      expect(tests.length).toBeGreaterThan(0);
      const silent = tests.filter((path) => !readFileSync(join(ROOT, path), "utf8").includes(`[${id}]`));
      expect(silent).toEqual([]);
    },
  );

  test("no test quotes one that is not in the table", () => {
    const known = new Set(rows.map(({ id }) => id));
    const quoted = [...filesUnder(join(ROOT, "tests"), /\.(test|spec)\.ts$/)].flatMap((file) =>
      [...readFileSync(file, "utf8").matchAll(/\[(INV-\d+\w?)\]/g)].map(
        ([, id = ""]) => `${id} in ${relative(ROOT, file)}`,
      ),
    );
    expect(quoted.filter((one) => !known.has(one.split(" ")[0] ?? ""))).toEqual([]);
  });
});
