/** Plan files designed to be slow: each targets a place where work may grow faster than the file. */
import { PLAN_FORMAT } from "#lib/plan/schema.ts";
import { exampleEquipment, exampleMove, exampleMoves } from "#lib/rules/define/example-plan.ts";
import type { DamagedFile } from "./damaged-files.ts";
import { longClass } from "./long-class.ts";

type Bag = Record<string, unknown>;
const NAMES = ["squat", "row", "press", "plank"] as const;
const FACINGS = ["front", "right", "back", "left"] as const;
const range = (n: number): number[] => Array.from({ length: n }, (_, i) => i);

function plan(items: readonly unknown[], more: Bag = {}): Bag {
  const rest = { title: "", lengthSeconds: 14400, equipment: exampleEquipment, moves: exampleMoves };
  return { format: PLAN_FORMAT, ...rest, items, ...more };
}
const heading = { id: "h", kind: "heading", title: "" };

/** Move items with many different set-ups. */
function many(count: number, more: (i: number) => Bag = () => ({})): unknown[] {
  return range(count).map((i) => ({
    ...exampleMove(`i${i}`, {
      move: NAMES[i % 4] ?? "squat",
      side: i % 3 === 0 ? "left" : i % 3 === 1 ? "right" : "both",
      springs: { light: i % 5, heavy: Math.floor(i / 5) % 3 },
      facing: FACINGS[Math.floor(i / 7) % 4] ?? "front",
      script: [],
    }),
    ...more(i),
  }));
}

const line = (text: string) => ({ kind: "form", text });
const long = (text: string, length: number): string => text.repeat(Math.ceil(length / text.length)).slice(0, length);

/** How many of each thing the longest files have: the full count, or a part of it. */
type Share = (count: number) => number;

/** Bad as the name says, where counts are full; the first of each kind is a valid plan. */
const VALUES: Readonly<Record<string, (share: Share) => unknown>> = {
  "sixty items and four hundred lines": (share) => longClass(share(60), share(400)),
  "2000 items under one heading": (share) => plan([heading, ...many(share(2000) - 1)]),
  "2000 headings": () => plan(range(2000).map((i) => ({ ...heading, id: `h${i}` }))),
  "1000 headings over a move each": (share) =>
    plan(many(share(1000)).flatMap((item, i) => [{ ...heading, id: `h${i}` }, item])),
  "2000 pauses": () => plan(range(2000).map((i) => ({ id: `p${i}`, kind: "pause", seconds: 7.2 }))),
  "2000 equal wishes, every second to be had": (share) =>
    plan(
      many(share(2000), () => ({ side: "both", seconds: 7, range: [1, 14400], transitionSeconds: 0 })),
      { gridSeconds: 1 },
    ),
  "1000 pairs beside 1000 items, all equal": (share) =>
    plan(
      many(share(2000), (i) => ({
        move: i < share(1500) ? "row" : "squat",
        side: i < share(1500) ? (i % 2 ? "left" : "right") : "both",
        seconds: 7,
        range: [1, 14400],
        transitionSeconds: 0,
      })),
      { gridSeconds: 1 },
    ),
  "wishes with six decimals": (share) =>
    plan(
      many(share(600), (i) => ({ seconds: 10 + i / 999_983, range: [1, 14400], transitionSeconds: 0 })),
      { gridSeconds: 1 },
    ),
  "one tie of 2000": (share) => plan([heading, ...many(share(2000) - 1, () => ({ keep: "t" }))]),
  "everybody after everybody before": (share) =>
    plan([heading, ...many(share(300), (i) => ({ after: range(i).map((n) => `i${n}`) }))]),
  "100 000 times after the same": () => plan([heading, ...many(2, () => ({ after: range(100_000).map(() => "h") }))]),
  "sixteen units in a block, four times": () =>
    plan(
      range(4).flatMap((b) => [
        { ...heading, id: `h${b}` },
        ...many(16, () => ({})).map((it, i) => ({ ...(it as Bag), id: `b${b}-${i}` })),
      ]),
    ),
  "every line a live field": (share) =>
    plan(
      many(share(60), () => ({
        script: range(100).map(() => line(long("{next-move}{seconds-left}", 1995).replace(/\{[^}]*$/, ""))),
      })),
    ),
  "200 long lines an item": (share) =>
    plan(many(share(20), () => ({ script: range(200).map(() => line(long("Long, longer. ", 2000))) }))),
  "numbers in every word": (share) =>
    plan(
      many(share(60), () => ({
        script: range(20).map(() => line(long("30 seconds left, last one on the right. ", 2000))),
      })),
    ),
  "letters of no word": (share) =>
    plan(many(share(40), () => ({ script: range(20).map(() => line(long("aeiouy", 2000))) }))),
  "digits only": (share) => plan(many(share(40), () => ({ script: range(20).map(() => line(long("9", 2000))) }))),
  "5000 moves that nobody does": () =>
    plan(many(10), {
      moves: { ...exampleMoves, ...Object.fromEntries(range(5000).map((i) => [`m${i}`, exampleMoves.squat])) },
    }),
  "twenty springs everywhere": (share) => {
    const springs = range(20).map((i) => ({
      id: `s${i}`,
      label: `s${i}`,
      count: 20,
      stiffnessNPerMm: 0.1,
      preloadN: 5,
    }));
    const on = (i: number) => Object.fromEntries(springs.map((s, k) => [s.id, (i * 7 + k * 3) % 21]));
    return plan([heading, ...many(share(800), (i) => ({ springs: on(i) }))], {
      equipment: { ...exampleEquipment, springs },
      moves: exampleMoves,
    });
  },
  "one item too many": () => plan(many(2001)),
  "200 000 items": () => plan(range(200_000)),
  "a wrong type in each of 2000 items": () => plan(many(2000, () => ({ seconds: "x", side: 3, springs: [] }))),
  "100 000 keys nobody knows": () => ({ ...plan([]), ...Object.fromEntries(range(100_000).map((i) => [`k${i}`, i])) }),
  "100 000 spring names": () =>
    plan(many(1, () => ({ springs: Object.fromEntries(range(100_000).map((i) => [`k${i}`, 1])) }))),
  "100 000 bad spring names": () =>
    plan(many(1, () => ({ springs: Object.fromEntries(range(100_000).map((i) => [`K ${i}`, -1])) }))),
  "100 000 cautions": () => plan([], { expected: range(100_000).map(() => "pregnancy") }),
  "100 000 cautions nobody knows": () => plan([], { expected: range(100_000).map((i) => `c${i}`) }),
  "wide studio limits": () =>
    plan([], { standards: { "total-length": { limits: Object.fromEntries(range(50_000).map((i) => [`l${i}`, i])) } } }),
  "a title of a million letters": () => plan([], { title: long("abc ", 1_000_000) }),
  "notes at their limit": () => plan([], { notes: long("{{ } \\ \u2028", 100_000) }),
};

const TEXTS: Readonly<Record<string, () => string>> = {
  "a million open lists": () => "[".repeat(1_000_000),
  "a million open objects": () => '{"a":'.repeat(200_000),
  "a million commas": () => `[${"0,".repeat(1_000_000)}0]`,
  "a million spaces, then nothing": () => " ".repeat(1_000_000),
  "a million backslashes": () => `{"format":"${"\\\\".repeat(500_000)}"}`,
  "a million quotes": () => '"'.repeat(1_000_000),
  "one long text that never ends": () => `{"format":"${"x".repeat(1_000_000)}`,
  "a number of a million digits": () => `{"lengthSeconds":${"9".repeat(1_000_000)}}`,
  "the same key 100 000 times": () => `{${'"a":1,'.repeat(100_000)}"a":1}`,
  "a mistake at the very end": () => `${JSON.stringify(longClass(200, 1200))},`,
  "a mistake after a million lines": () => `${"\n".repeat(1_000_000)}x`,
};

/** All of them, made one at a time; with a `part` below 1 the longest have so much less in them. */
export function* worstFiles(part = 1): Generator<DamagedFile> {
  const share: Share = (count) => Math.ceil(count * part);
  const encoder = new TextEncoder();
  for (const [what, make] of Object.entries(VALUES)) yield { what, bytes: encoder.encode(JSON.stringify(make(share))) };
  for (const [what, make] of Object.entries(TEXTS)) yield { what, bytes: encoder.encode(make()) };
}
