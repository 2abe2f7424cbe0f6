/**
 * JSON text into a value, refusing what JSON.parse lets through silently: a key given twice (the last one would win and
 * the first be lost) and nesting so deep that later steps would run out of stack.
 */
import { findSyntaxError } from "./json-place.ts";
import type { Path } from "./pointer.ts";

export type JsonText = { ok: true; value: unknown } | { ok: false; path: Path; problem: string };

/** A plan file needs seven levels; house limits may hold a few more. */
export const MAX_DEPTH = 32;

/** Never throws. Cost: one native parse and one pass over the text. */
export function readJsonText(text: string): JsonText {
  const source = text.startsWith("\uFEFF") ? text.slice(1) : text;
  if (source.trim() === "") return { ok: false, path: [], problem: "should be a JSON object, but it is empty" };
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

interface Level {
  /** Keys seen, or null for an array. */
  readonly keys: Set<string> | null;
  step: string | number;
}

const QUOTE = 34;
const BACKSLASH = 92;

/** Walks text that is known to be valid JSON. Finds the first repeated key or the first value nested too deep. */
function scan(source: string): JsonText | undefined {
  const levels: Level[] = [];
  let wantsKey = false;
  for (let i = 0; i < source.length; i++) {
    const level = levels.at(-1);
    switch (source.charCodeAt(i)) {
      case QUOTE: {
        const end = stringEnd(source, i);
        if (wantsKey && level?.keys) {
          const key = keyText(source, i, end);
          level.step = key;
          if (level.keys.has(key)) return { ok: false, path: levels.map((l) => l.step), problem: "is given twice" };
          level.keys.add(key);
          wantsKey = false;
        }
        i = end;
        break;
      }
      case 0x7b: // {
        levels.push({ keys: new Set(), step: "" });
        wantsKey = true;
        break;
      case 0x5b: // [
        levels.push({ keys: null, step: 0 });
        wantsKey = false;
        break;
      case 0x7d: // }
      case 0x5d: // ]
        levels.pop();
        wantsKey = false;
        break;
      case 0x2c: // ,
        if (level?.keys) wantsKey = true;
        else if (level) level.step = Number(level.step) + 1;
        break;
    }
    if (levels.length > MAX_DEPTH) {
      return { ok: false, path: levels.slice(0, 3).map((l) => l.step), problem: "is nested too deeply" };
    }
  }
  return undefined;
}

/** Index of the quote that closes the string opened at `from`. */
function stringEnd(source: string, from: number): number {
  let end = from;
  for (;;) {
    end = source.indexOf('"', end + 1);
    let slashes = 0;
    while (source.charCodeAt(end - 1 - slashes) === BACKSLASH) slashes++;
    if (slashes % 2 === 0) return end;
  }
}

function keyText(source: string, from: number, to: number): string {
  const raw = source.slice(from + 1, to);
  return raw.includes("\\") ? String(JSON.parse(`"${raw}"`)) : raw;
}
