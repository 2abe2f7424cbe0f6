/** Damage to the values of a plan file that is still JSON: wrong types, unknown ids, times at the limits. */
import type { Plan } from "#lib/plan/schema.ts";
import type { Dice } from "./dice.ts";

/** A kind of damage, and the function that does it. */
export type Harm<T> = readonly [string, (it: T, dice: Dice) => T];

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Seat = { readonly holder: Json[] | { [key: string]: Json }; readonly key: string | number };

/** Every place within a value. */
function seatsOf(root: Json): Seat[] {
  const seats: Seat[] = [];
  const visit = (holder: Json): void => {
    if (typeof holder !== "object" || holder === null) return;
    const keys = Array.isArray(holder) ? [...holder.keys()] : Object.keys(holder);
    for (const key of keys) {
      seats.push({ holder, key });
      visit(get({ holder, key }));
    }
  };
  visit(root);
  return seats;
}

function get({ holder, key }: Seat): Json {
  return (Array.isArray(holder) ? holder[Number(key)] : holder[key]) ?? null;
}

function set({ holder, key }: Seat, value: Json): void {
  if (Array.isArray(holder)) holder[Number(key)] = value;
  else holder[key] = value;
}

/** Damages one place of a file that is still JSON. */
function atSeat(change: (seat: Seat, dice: Dice, root: Json, seats: readonly Seat[]) => void) {
  return (text: string, dice: Dice): string => {
    const root = parsed(text);
    const seats = seatsOf(root);
    if (seats.length === 0) return text;
    change(dice.one(seats), dice, root, seats);
    return JSON.stringify(root);
  };
}

function parsed(text: string): Json {
  try {
    return JSON.parse(text) as Json;
  } catch {
    return null;
  }
}

/** As `atSeat`, at a place whose key is one of these. */
function atKey(keys: readonly string[], value: (dice: Dice, plan: Plan, old: Json) => Json) {
  return atSeat((_seat, dice, root, seats) => {
    const fitting = seats.filter((seat) => keys.includes(String(seat.key)));
    if (fitting.length === 0) return;
    const seat = dice.one(fitting);
    set(seat, value(dice, root as unknown as Plan, get(seat)));
  });
}

const NAMES = ["__proto__", "constructor", "prototype", "toString", "hasownproperty", "valueof", "0", "-1", "length"];
const OTHERS: readonly Json[] = [null, true, 0, -1, 1.5, "", "x", [], {}, [[]], { a: 1 }, "NaN", 1e308, -1e308];
const TIMES: readonly number[] = [0, 0.1, 0.5, 1, 2.5, 59.999999999, 60, 600, 14399.5, 14400, 14401, 1 / 3, 5e-324];

export const VALUE_HARMS: readonly Harm<string>[] = [
  ["a wrong type", atSeat((seat, dice) => set(seat, dice.one(OTHERS)))],
  [
    "a key gone",
    atSeat((seat) => (Array.isArray(seat.holder) ? seat.holder.splice(0, 1) : delete seat.holder[seat.key])),
  ],
  [
    "a key nobody knows",
    atSeat(({ holder }, dice) => {
      if (!Array.isArray(holder)) holder[dice.one(NAMES)] = dice.one(OTHERS);
    }),
  ],
  ["two places changed over", atSeat((seat, dice, _root, seats) => changeOver(seat, dice.one(seats)))],
  [
    "one place copied to another",
    atSeat((seat, dice, _root, seats) => set(seat, structuredClone(get(dice.one(seats))))),
  ],
  [
    "a dangling id",
    atKey(["move", "after", "keep", "id"], (dice) => dice.one(["nowhere", "0", "constructor", "toString"])),
  ],
  ["a repeated id", atKey(["id"], (_dice, plan) => plan?.items?.[0]?.id ?? "x")],
  [
    "an item twice",
    atKey(["items"], (dice, _plan, old) => (Array.isArray(old) && old.length > 0 ? [...old, dice.one(old)] : old)),
  ],
  ["items turned round", atKey(["items"], (_dice, _plan, old) => (Array.isArray(old) ? [...old].reverse() : old))],
  ["many items", atKey(["items"], manyItems)],
  [
    "another time",
    atKey(["seconds", "transitionSeconds", "openingSeconds", "closingSeconds"], (dice) => dice.one(TIMES)),
  ],
  ["another grid", atKey(["gridSeconds", "headsUpSeconds", "lengthSeconds"], (dice) => dice.one(TIMES))],
  ["another range", atKey(["range"], (dice) => [dice.one(TIMES), dice.one(TIMES)])],
  ["springs by strange names", atKey(["springs"], (dice) => ({ [dice.one(NAMES)]: dice.upTo(30) }))],
  ["locks and ties", atKey(["items"], tied)],
  [
    "strange limits",
    atKey(["standards"], (dice) => ({ "total-length": { limits: { maxOverSeconds: dice.one(OTHERS) } } })),
  ],
  [
    "braces in a line",
    atKey(["text"], (dice) => dice.one(["{", "{{", "{side", "{nothing}", "{{{side}}}", "{side}".repeat(300)])),
  ],
];

function changeOver(a: Seat, b: Seat): void {
  const [first, second] = [structuredClone(get(a)), structuredClone(get(b))];
  set(a, second);
  set(b, first);
}

function manyItems(dice: Dice, _plan: Plan, old: Json): Json {
  if (!Array.isArray(old) || old.length === 0) return old;
  const wanted = dice.one([60, 60, 60, 150, 400, 2001]);
  return Array.from({ length: wanted }, (_, i) => {
    const item = old[i % old.length];
    return typeof item === "object" && item !== null && !Array.isArray(item)
      ? { ...item, id: `n${i}`, ...(item.after ? { after: [] } : {}) }
      : (item ?? null);
  });
}

function tied(dice: Dice, _plan: Plan, old: Json): Json {
  if (!Array.isArray(old)) return old;
  return old.map((item): Json => {
    if (typeof item !== "object" || item === null || Array.isArray(item) || item.kind !== "move") return item;
    const after = dice.upTo(4) === 0 ? [dice.one(old)].flatMap((o) => (o as { id: string }).id) : [];
    return { ...item, locked: dice.upTo(3) === 0, keep: `t${dice.upTo(3)}`, after };
  });
}
