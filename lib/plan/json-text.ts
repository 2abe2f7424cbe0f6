/**
 * Parses JSON and refuses what JSON.parse lets through: a key given twice, where the first value would be lost, and nesting
 * so deep that later steps would run out of stack.
 */
import { findSyntaxError } from "./json-place.ts";
import type { Path } from "./pointer.ts";

export type JsonText = { ok: true; value: unknown } | { ok: false; path: Path; problem: string };

/** A plan file needs seven levels; studio limits may add a few. */
export const MAX_DEPTH = 32;

/** The most open brackets with which text is still given to the engine. */
const MOST_OPEN = 50_000;

/**
 * Openings and commas together: the values of a file, nearly. The longest plan that can be written, 2000 items with 6000
 * lines, has 46,000. Each value costs a microsecond or two, so that a file of 5 MB of them would take more than a second.
 */
const MOST_VALUES = 120_000;

/** Never throws. Cost: one native parse and two passes over the text. */
export function readJsonText(text: string): JsonText {
  const source = text.startsWith("\uFEFF") ? text.slice(1) : text;
  if (source.trim() === "") return { ok: false, path: [], problem: "should be a JSON object, but it is empty" };
  const tooMuch = outOfBounds(source);
  if (tooMuch !== undefined) return { ok: false, path: [], problem: tooMuch };
  let value: unknown;
  try {
    value = JSON.parse(source);
  } catch {
    return { ok: false, path: [], problem: `should be JSON, but ${placeOf(source)}` };
  }
  return scan(source) ?? { ok: true, value };
}

function placeOf(source: string): string {
  const place = findSyntaxError(source);
  return place ? `it cannot be read at line ${place.line}, column ${place.column}` : "it breaks off before its end";
}

/** A million open brackets or values would keep the engine busy for a second. The text need not be JSON. */
function outOfBounds(source: string): string | undefined {
  let depth = 0;
  let values = 0;
  for (let i = 0; i < source.length; i++) {
    const char = source.charCodeAt(i);
    if (char === QUOTE) {
      i = stringEnd(source, i);
      if (i < 0) return undefined;
    } else if (char === OBJECT || char === ARRAY) {
      values++;
      if (++depth > MOST_OPEN) return "is nested too deeply";
    } else if (char === COMMA) values++;
    else if (char === OBJECT_END || char === ARRAY_END) depth--;
    if (values > MOST_VALUES) return "holds more values than any plan has";
  }
  return undefined;
}

interface Level {
  /** Keys seen, or null for an array. */
  readonly keys: Set<string> | null;
  step: string | number;
}

const code = (char: string): number => char.charCodeAt(0);
const [QUOTE, BACKSLASH, COMMA] = [code('"'), code("\\"), code(",")];
const [OBJECT, OBJECT_END, ARRAY, ARRAY_END] = [code("{"), code("}"), code("["), code("]")];

/** Walks text that is known to be valid JSON. Finds the first repeated key or the first value nested too deep. */
function scan(source: string): JsonText | undefined {
  const levels: Level[] = [];
  let wantsKey = false;
  for (let i = 0; i < source.length; i++) {
    const char = source.charCodeAt(i);
    if (char === QUOTE) {
      const end = stringEnd(source, i);
      if (wantsKey && !addKey(levels.at(-1), keyText(source, i, end))) return flaw(levels, "is given twice");
      wantsKey = false;
      i = end;
    } else if (char === OBJECT || char === ARRAY) {
      levels.push({ keys: char === OBJECT ? new Set() : null, step: char === OBJECT ? "" : 0 });
      wantsKey = char === OBJECT;
      if (levels.length > MAX_DEPTH) return flaw(levels.slice(0, 3), "is nested too deeply");
    } else if (char === OBJECT_END || char === ARRAY_END) {
      levels.pop();
      wantsKey = false;
    } else if (char === COMMA) {
      wantsKey = nextSeat(levels.at(-1));
    }
  }
  return undefined;
}

const flaw = (levels: readonly Level[], problem: string): JsonText => ({
  ok: false,
  path: levels.map((level) => level.step),
  problem,
});

/** False when the object has the key already. */
function addKey(level: Level | undefined, key: string): boolean {
  if (!level?.keys) return true;
  level.step = key;
  if (level.keys.has(key)) return false;
  level.keys.add(key);
  return true;
}

/** After a comma: true when a key comes next, which is so in objects. */
function nextSeat(level: Level | undefined): boolean {
  if (level?.keys === null) level.step = Number(level.step) + 1;
  return level !== undefined && level.keys !== null;
}

/** Index of the quote that closes the string opened at `from`; -1 when none does. */
function stringEnd(source: string, from: number): number {
  let end = from;
  for (;;) {
    end = source.indexOf('"', end + 1);
    if (end < 0) return end;
    let slashes = 0;
    while (source.charCodeAt(end - 1 - slashes) === BACKSLASH) slashes++;
    if (slashes % 2 === 0) return end;
  }
}

function keyText(source: string, from: number, to: number): string {
  const raw = source.slice(from + 1, to);
  return raw.includes("\\") ? String(JSON.parse(`"${raw}"`)) : raw;
}
