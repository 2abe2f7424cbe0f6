/**
 * Days, times, forces and lengths are written in `lib/formats` alone: elsewhere nobody asks `Intl` for a date, names a month or a
 * weekday, or puts a unit behind a number.
 */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { sourceAt, sources } from "./sources.ts";

const PROGRAM = sources
  .filter(({ layer }) => layer === "app" || layer === "lib" || layer === "server")
  .map(({ path }) => path);

const FORBIDDEN: readonly (readonly [what: string, sign: RegExp])[] = [
  ["a date or time by Intl", /\.toLocale(?:Date|Time)String\(|Intl\.(?:DateTimeFormat|RelativeTimeFormat)/],
  ["parts of a date in the zone of whoever runs it", /\.get(?:Hours|Minutes|Day|Date|Month|FullYear)\(\)/],
  [
    "names of months or weekdays",
    /["'` ](?:Jan|January|Mon|Monday|Mo)["'`]? ?,? ["'`]?(?:Feb|February|Tue|Tuesday|Tu)\b/,
  ],
  ["a force", /\} N\b(?! per)|\bN`|["'] N["']/],
  ["a length", /\} cm\b|\} in[`.",;]|["'] ?cm["'`]/],
  ["a percentage", /(?<!(?:width|height|left|top|inset|const at)\b.*)\}\s?%(?!\])/],
];

/** By path: what may stand there, and why. */
const ALLOWED: Readonly<Record<string, string>> = {
  "lib/calendar/zone.ts": "the wall clock of a zone, in numbers",
  "lib/springs/pasted-readings.ts": "reads units that were pasted",
  "lib/springs/readings.ts": "the units of a sheet of readings",
  "lib/paste/read-side.ts": "reads units that were pasted",
  "lib/rules/fill-message.ts": "the units that a message names",
  "lib/rules/kept-words.ts": "the units of canonical words",
  "lib/rules/finding-words.ts": "the units of canonical words",
  "lib/springs/scale-words.ts": "what a unit of force on a scale means in newtons",
};

test("nobody writes a date, a force or a length by hand", () => {
  const found = PROGRAM.filter((path) => !path.startsWith("lib/formats/") && !Object.hasOwn(ALLOWED, path)).flatMap(
    (path) => {
      const code = withoutComments(readFileSync(path, "utf8"));
      return FORBIDDEN.filter(([, sign]) => sign.test(code)).map(([what]) => `${path}: ${what}`);
    },
  );
  expect(found).toEqual([]);
});

test("what is allowed is there", () => {
  for (const path of Object.keys(ALLOWED))
    expect(
      FORBIDDEN.some(([, sign]) => sign.test(withoutComments(readFileSync(path, "utf8")))),
      path,
    ).toBe(true);
});

test("every page of somebody who is signed in hands their formats on", () => {
  const pages = PROGRAM.filter((path) => path.endsWith("/page.tsx"));
  const without = pages.filter((path) => {
    const code = readFileSync(path, "utf8");
    return (
      /requirePerson\(|actorFromHeaders\(|readSignedCard\(/.test(code) &&
      !/<Shell|FormatsProvider|<PlanPage|<SignInForm/.test(code)
    );
  });
  expect(without).toEqual([]);
});

const withoutComments = (code: string): string => code.replace(/\/\*[\s\S]*?\*\/|(?<!:)\/\/.*$/gm, "");

/** What a server component reaches without passing a file that is for the browser. */
function onServer(): Set<string> {
  const isClient = (path: string) => /^["']use client["']/.test(sourceAt.get(path)?.text ?? "");
  const reached = new Set<string>();
  const from = PROGRAM.filter((path) => /\/(?:page|layout|not-found|error)\.tsx$/.test(path) && !isClient(path));
  for (let path = from.pop(); path !== undefined; path = from.pop()) {
    if (reached.has(path) || isClient(path)) continue;
    reached.add(path);
    for (const { to, typeOnly } of sourceAt.get(path)?.imports ?? []) if (to !== undefined && !typeOnly) from.push(to);
  }
  return reached;
}

test("no component of the server asks for the formats of its tree, which it does not have", () => {
  const asking = [...onServer()].filter((path) => /\buseFormats\(\)/.test(sourceAt.get(path)?.text ?? ""));
  expect(asking).toEqual([]);
});
