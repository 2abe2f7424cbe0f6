/** Plan files in: what is refused, where, and in which words; nothing that comes can break the parser. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planJsonSchema } from "#lib/plan/json-schema.ts";
import { formatPointer, valueAt } from "#lib/plan/pointer.ts";
import { parsePlan } from "#lib/plan-file/parse.ts";
import { bothSides, exampleMove, exampleMoves, examplePlan } from "#lib/rules/define/example-plan.ts";
import { often } from "#tests/support/long.ts";
import { validPlan } from "#tests/support/plan-arbitrary.ts";

const good = examplePlan(bothSides("row"), { standards: { "missing-cue": { limits: { requiredKinds: ["safety"] } } } });

const LINE = ["items", 0, "script", 0];
const AT = "/items/0/script/0/at";

/** The answer for the good plan with the value at a path set, or taken away where it is undefined. */
function changed(path: (string | number)[], value: unknown) {
  const plan: unknown = structuredClone(good);
  const holder = valueAt(plan, path.slice(0, -1)) as Record<string | number, unknown>;
  const key = path.at(-1) as string;
  if (value === undefined) delete holder[key];
  else holder[key] = value;
  return parsePlan(plan);
}

describe("a good plan", () => {
  it("comes in as text or as a value, and is a copy", () => {
    const parsed = parsePlan(good);
    expect(parsed).toEqual({ ok: true, plan: good });
    expect(parsePlan(`\uFEFF${JSON.stringify(good)}`)).toEqual(parsed);
    expect(parsed.ok && parsed.plan.items).not.toBe(good.items);
  });

  it("of any shape comes in", () => {
    fc.assert(
      fc.property(validPlan, (plan) => {
        expect(parsePlan(JSON.stringify(plan))).toEqual({ ok: true, plan });
      }),
      { seed: 51, numRuns: 100 },
    );
  });
});

describe("what is refused, and where", () => {
  it.each<[string, (string | number)[], unknown, string, RegExp]>([
    ["a wrong type", ["items", 0, "seconds"], "45", "/items/0/seconds", /should be a number from 1 to 14400$/],
    ["a number out of range", ["lengthSeconds"], 59, "/lengthSeconds", /should be a whole number from 60 to 14400$/],
    ["not a number", ["items", 0, "seconds"], Number.NaN, "/items/0/seconds", /should be a number/],
    ["without end", ["items", 0, "seconds"], Number.POSITIVE_INFINITY, "/items/0/seconds", /should be a number/],
    ["a missing key", ["title"], undefined, "/title", /is missing; it should be text of up to 200 characters$/],
    ["an unknown key", ["items", 1, "colour"], "red", "/items/1/colour", /is not a key of this format$/],
    ["an unknown key, escaped", ["a/b~c"], 1, "/a~1b~0c", /is not a key/],
    ["an unknown kind", ["items", 0, "kind"], "break", "/items/0/kind", /should be one of heading, pause, move$/],
    ["an unknown group", ["moves", "row", "muscles", "neck"], 1, "/moves/row/muscles/neck", /is not a key/],
    ["a bad id", ["moves", "Bad Id"], exampleMoves.squat, "/moves/Bad Id", /should be named by an id/],
    ["a range downwards", ["items", 0, "range"], [60, 30], "/items/0/range", /shortest must not be above the longest/],
    ["a move's seconds downwards", ["moves", "row", "seconds"], [9, 3], "/moves/row/seconds", /should go upwards/],
    ["half a tempo", ["moves", "row", "tempo"], { outSeconds: 2 }, "/moves/row/tempo/backSeconds", /is missing/],
    ["a move that is not there", ["items", 0, "move"], "gone", "/items/0/move", /there is no "gone"$/],
    ["a move every object inherits", ["items", 0, "move"], "constructor", "/items/0/move", /there is no/],
    [
      "a spring that is not there",
      ["items", 0, "springs", "extra"],
      1,
      "/items/0/springs/extra",
      /equipment's springs/,
    ],
    [
      "a move's least of no spring",
      ["moves", "row", "springs"],
      { min: { x: 1 } },
      "/moves/row/springs/min/x",
      /springs/,
    ],
    [
      "a move's most of no spring",
      ["moves", "row", "springs"],
      { max: { x: 1 } },
      "/moves/row/springs/max/x",
      /springs/,
    ],
    ["after nothing", ["items", 0, "after"], ["row-right", "gone"], "/items/0/after/1", /there is no "gone"$/],
    ["an id twice", ["items", 1, "id"], "row-left", "/items/1/id", /is a repeated id: \/items\/0 has it already$/],
    ["a spring's id twice", ["equipment", "springs", 1, "id"], "light", "/equipment/springs/1/id", /repeated id/],
    ["an unknown rule", ["standards", "no-rule"], {}, "/standards/no-rule", /should be the id of a rule/],
    [
      "an unknown limit",
      ["standards", "uneven-sides"],
      { limits: { x: 1 } },
      "/standards/uneven-sides/limits/x",
      /maxDiff/,
    ],
    [
      "a limit out of bounds",
      ["standards", "uneven-sides"],
      { limits: { maxDifferenceSeconds: -1 } },
      "/standards/uneven-sides/limits/maxDifferenceSeconds",
      /should be a number from 0 to 600$/,
    ],
    ["nobody at all", ["people"], 0, "/people", /should be a whole number from 1 to 60$/],
    ["half a person", ["people"], 2.5, "/people", /should be a whole number from 1 to 60$/],
    ["a spread above all of it", ["equipment", "spreadShare"], 1.5, "/equipment/spreadShare", /from 0 to 1$/],
    [
      "seconds of no action",
      ["equipment", "actionSeconds"],
      { sides: 4 },
      "/equipment/actionSeconds/sides",
      /not a key/,
    ],
    ["a line at no time", [...LINE, "at"], {}, `${AT}/afterSeconds`, /is missing; it should be a number/],
    ["a line before the work", [...LINE, "at"], { afterSeconds: -1 }, `${AT}/afterSeconds`, /from 0 to 14400$/],
    ["a line at two times", [...LINE, "at"], { afterSeconds: 3, leftSeconds: 9 }, `${AT}/leftSeconds`, /is not a key/],
    ["a line break in a key", ["x\ny"], 1, "/x\ny", /^\/x\?y is not/],
    ["half a character", ["title"], "\ud83d", "/title", /UTF-8/],
    ["another format", ["format"], "springline.plan/2", "/format", /should be "springline.plan\/1"$/],
  ])("%s", (_what, path, value, pointer, message) => {
    const answer = changed(path, value);
    expect(answer).toMatchObject({ ok: false, pointer });
    expect(answer.ok ? "" : answer.message).toMatch(message);
    expect(answer.ok ? "" : answer.message).not.toMatch(/[\n\r]/);
  });

  it("an unknown live field, with its column", () => {
    const at = (text: string) => changed(["items", 0, "script", 0, "text"], text);
    expect(at("Go {soon} now")).toEqual({
      ok: false,
      pointer: "/items/0/script/0/text",
      message: "/items/0/script/0/text has an unknown live field {soon} at column 4; a plain brace is written {{",
    });
    expect(at("unclosed {next-move")).toMatchObject({ ok: false });
    expect(at("{{soon} and {springs}").ok).toBe(true);
  });

  it.each([
    ["", /is empty$/],
    ["{", /breaks off before its end$/],
    ['{"a": 1,\n "b": }', /line 2, column 7$/],
    ["[1 2]", /line 1, column 4$/],
    ["nonsense", /line 1, column 1$/],
    ["null", /^the plan file should be an object$/],
    ["[]", /^the plan file should be an object$/],
    ['{"x": 1e999}', /is missing|not a key/],
    [`${'{"a":'.repeat(100_000)}1${"}".repeat(100_000)}`, /is nested too deeply$/],
    ["[".repeat(1_000_000), /is nested too deeply$/],
    ['{"__proto__": {"title": "x"}}', /^\/__proto__ is not a key of this format$/],
  ])("text that is no plan: %.40s", (text, message) => {
    const answer = parsePlan(text);
    expect(answer.ok ? "" : answer.message).toMatch(message);
  });

  it("a key given twice, as an id where keys are ids", () => {
    const twice = (text: string) => {
      const answer = parsePlan(text);
      return answer.ok ? "" : answer.message;
    };
    expect(twice('{"moves": {"a": 1, "b": {"a": 2}, "a": 3}}')).toBe("/moves/a is a repeated id: it is given twice");
    expect(twice('{"items": [{}, {"springs": {"x": 1, "x": 1}}]}')).toMatch(/^\/items\/1\/springs\/x is a repeated id/);
    expect(twice('{"title": "a", "\\u0074itle": "b"}')).toBe("/title is a repeated key: it is given twice");
    expect(twice('{"title": "{\\"a\\", \\"a\\"}", "notes": "\\\\"}')).not.toMatch(/repeated/);
  });

  it("values that are no plain data", () => {
    const trap = new Proxy(
      {},
      {
        ownKeys: () => {
          throw new Error("trap");
        },
      },
    );
    const loop: Record<string, unknown> = {};
    loop.loop = loop;
    const odd = [
      undefined,
      Symbol("x"),
      5n,
      () => 1,
      new Date(0),
      new Map(),
      trap,
      loop,
      new Array(4e9),
      Object.create({ title: 1 }),
    ];
    for (const value of odd) expect(parsePlan(value).ok).toBe(false);
    for (const value of odd) expect(changed(["notes"], value ?? null).ok).toBe(false);
  });
});

describe("damaged files", () => {
  const text = JSON.stringify(good);

  it("cut, spliced and scribbled on, are read or refused with one line, never a crash", () => {
    const junk = fc.constantFrom(
      "",
      "{",
      "}",
      "[",
      "]",
      '"',
      ",",
      ":",
      "\\",
      "0",
      "-",
      "null",
      "\u0000",
      "\ud800",
      "1e999",
      '"id":"a",',
    );
    const harm = fc.array(fc.tuple(fc.nat(text.length), fc.nat(40), junk), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(harm, (list) => {
        expectClear(parsePlan(list.reduce((t, [at, n, put]) => t.slice(0, at) + put + t.slice(at + n), text)));
      }),
      { seed: 61, numRuns: often(800, 5000) },
    );
  }, 120_000);

  it("with any value at any place, are read or refused at that place or one that depends on it", () => {
    const paths = allPaths(good);
    fc.assert(
      fc.property(fc.nat(paths.length - 1), fc.jsonValue({ maxDepth: 2 }), (n, value) => {
        expectClear(changed(paths[n] ?? [], value));
      }),
      { seed: 62, numRuns: often(800, 5000) },
    );
  }, 120_000);
});

function expectClear(answer: ReturnType<typeof parsePlan>): void {
  if (answer.ok) return;
  expect(answer.message).toMatch(/^(\/|the plan file )/);
  expect(answer.message).not.toMatch(/[\p{Cc}]|undefined|\[object/u);
  expect(answer.message.length).toBeLessThan(700);
}

function allPaths(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== "object" || value === null) return [];
  const entries: [string | number, unknown][] = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return entries.flatMap(([key, inner]) => [[...path, key], ...allPaths(inner, [...path, key])]);
}

describe("pointers", () => {
  it("are written as RFC 6901 section 5 lists them", () => {
    const cases: [(string | number)[], string][] = [
      [[], ""],
      [["foo"], "/foo"],
      [["foo", 0], "/foo/0"],
      [[""], "/"],
      [["a/b"], "/a~1b"],
      [["c%d"], "/c%d"],
      [["e^f"], "/e^f"],
      [["g|h"], "/g|h"],
      [["i\\j"], "/i\\j"],
      [['k"l'], '/k"l'],
      [[" "], "/ "],
      [["m~n"], "/m~0n"],
    ];
    for (const [path, pointer] of cases) expect(formatPointer(path)).toBe(pointer);
  });
});

describe("the published schema", () => {
  it("is JSON Schema 2020-12 with a name, and says every key the parser takes", () => {
    const schema = planJsonSchema();
    expect(schema).toMatchObject({
      $schema: "https://json-schema.org/draft/2020-12/schema",
      $id: "https://springline.invalid/schema/plan-1.json",
      type: "object",
      additionalProperties: false,
    });
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
    expect(schema.required).toEqual(["format", "title", "lengthSeconds", "equipment", "moves", "items"]);
  });
});

describe("a large file", () => {
  it("of two megabytes is read (milliseconds, for information)", () => {
    const line = {
      kind: "form" as const,
      text: 'Breathe out and keep the carriage still, "{side}", all the way home. '.repeat(2),
    };
    const items = Array.from({ length: 1900 }, (_, i) =>
      exampleMove(`i-${i}`, { script: Array.from({ length: 6 }, () => line) }),
    );
    const text = JSON.stringify(examplePlan(items));
    expect(text.length).toBeGreaterThan(2_000_000);
    const start = performance.now();
    expect(parsePlan(text).ok).toBe(true);
    console.info(`parsing ${Math.round(text.length / 1e5) / 10} MB took ${Math.round(performance.now() - start)} ms`);
  });
});
