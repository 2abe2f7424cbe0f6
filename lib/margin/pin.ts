/**
 * Pins: a comment keeps hold of its words by two places in the shared text and a quote. The places follow edits; the
 * quote shows whether the words are still those commented on, and finds them again when a line was split around them.
 */
import * as buffer from "lib0/buffer";
import * as Y from "yjs";
import { scriptOf } from "#lib/doc/read.ts";
import type { Anchor } from "#lib/protocol/messages.ts";
import { type FlatScript, flatLineAt, flatOffsetOf, flatScript, lineEnd, quoteBetween } from "./flat-script.ts";

export type WordsAnchor = Extract<Anchor, { kind: "words" }>;

/** UTF-16 units. Longer than this is a whole script: comment on the item instead. */
export const MAX_QUOTE = 500;
/** A shorter quote may occur in many places, so it is not searched for once its place is lost. */
const MIN_SEARCHED_QUOTE = 8;

/** Offsets are those of `flatScript`. */
export type Pin =
  | { readonly state: "here"; readonly from: number; readonly to: number }
  | { readonly state: "changed"; readonly from: number; readonly to: number; readonly now: string }
  | { readonly state: "gone" };

/**
 * A pin on the words between two offsets of an item's script, without whitespace at the ends. Null when there are no
 * words between them, or more than `MAX_QUOTE`.
 */
export function pinWords(fragment: Y.XmlFragment, itemId: string, from: number, to: number): WordsAnchor | null {
  const flat = flatScript(fragment);
  const isSpace = (i: number) => /\s/u.test(flat.text[i] ?? "");
  let first = Math.max(0, from);
  let last = Math.min(flat.text.length, to);
  while (first < last && isSpace(first)) first++;
  while (last > first && isSpace(last - 1)) last--;
  const quote = quoteBetween(flat, first, last);
  const start = placeBefore(fragment, flat, first);
  const end = placeAfter(fragment, flat, last);
  if (quote === "" || quote.length > MAX_QUOTE || start === null || end === null) return null;
  return { kind: "words", itemId, from: encode(start), to: encode(end), quote };
}

/** Holds on to what is right of the offset, so that words written before it stay outside. */
function placeBefore(fragment: Y.XmlFragment, flat: FlatScript, offset: number): Y.RelativePosition | null {
  const line = fragment.get(flatLineAt(flat, offset));
  if (!(line instanceof Y.XmlElement)) return null;
  const starts = flat.places.get(line) ?? [];
  const index = starts.findIndex((start, i) => start <= offset && offset < (starts[i + 1] ?? start));
  const child: unknown = index < 0 ? null : line.get(index);
  if (child instanceof Y.XmlText) return Y.createRelativePositionFromTypeIndex(child, offset - (starts[index] ?? 0), 0);
  return index < 0 ? null : Y.createRelativePositionFromTypeIndex(line, index, 0);
}

/** Holds on to what is left of the offset, so that words written after it stay outside. */
function placeAfter(fragment: Y.XmlFragment, flat: FlatScript, offset: number): Y.RelativePosition | null {
  const line = fragment.get(flatLineAt(flat, offset - 1));
  if (!(line instanceof Y.XmlElement)) return null;
  const starts = flat.places.get(line) ?? [];
  const index = starts.findIndex((start, i) => start < offset && offset <= (starts[i + 1] ?? start));
  const child: unknown = index < 0 ? null : line.get(index);
  if (child instanceof Y.XmlText)
    return Y.createRelativePositionFromTypeIndex(child, offset - (starts[index] ?? 0), -1);
  return index < 0 ? null : Y.createRelativePositionFromTypeIndex(line, index + 1, -1);
}

/** Where a pin's words are now. Reads only; an anchor that cannot be read counts as gone. */
export function pinOf(doc: Y.Doc, anchor: WordsAnchor): Pin {
  const fragment = scriptOf(doc, anchor.itemId);
  return fragment === undefined ? { state: "gone" } : pinIn(fragment, flatScript(fragment), anchor);
}

/** Like `pinOf`, for many pins in a script that was flattened once. */
export function pinIn(fragment: Y.XmlFragment, flat: FlatScript, anchor: WordsAnchor): Pin {
  const range = rangeOf(fragment, flat, anchor);
  const now = range === null ? "" : quoteBetween(flat, range.from, range.to);
  if (range !== null && now === anchor.quote) return { state: "here", ...range };
  const moved = searched(flat, anchor.quote);
  if (moved !== null) return { state: "here", ...moved };
  return range === null || now === "" ? { state: "gone" } : { state: "changed", ...range, now };
}

type Range = { readonly from: number; readonly to: number };

/** When the line of one end is gone, the remaining words end where the other end's line does. */
function rangeOf(fragment: Y.XmlFragment, flat: FlatScript, anchor: WordsAnchor): Range | null {
  const start = resolve(fragment, flat, anchor.from);
  const end = resolve(fragment, flat, anchor.to);
  const from = start ?? (end === null ? null : (flat.lineStarts[flatLineAt(flat, end)] ?? null));
  const to = end ?? (start === null ? null : lineEnd(flat, flatLineAt(flat, start)));
  return from === null || to === null || from >= to ? null : { from, to };
}

/**
 * An anchor comes from the network, and whatever is in it must not stop the page. Yjs throws on bytes it cannot read
 * and on places that make no sense, and would create a root type for a name it does not know.
 */
function resolve(fragment: Y.XmlFragment, flat: FlatScript, encoded: string): number | null {
  if (fragment.doc === null) return null;
  try {
    const relative = Y.decodeRelativePosition(buffer.fromBase64(encoded));
    if (relative.tname !== null) return null;
    const place = Y.createAbsolutePositionFromRelativePosition(relative, fragment.doc);
    return place === null ? null : flatOffsetOf(flat, place.type, place.index);
  } catch {
    return null;
  }
}

/** The only place where the quote occurs in the script; null when there is none, or more than one. */
function searched(flat: FlatScript, quote: string): Range | null {
  if (quote.length < MIN_SEARCHED_QUOTE) return null;
  const letters = [...quote.matchAll(/\{[a-z-]+\}|[\s\S]/gu)].map((m) => m[0]);
  const pattern = letters.map((part) => (part.length > 2 ? "\uFFFC" : part === " " ? "\\s+" : escaped(part))).join("");
  const found = [...flat.text.matchAll(new RegExp(pattern, "gu"))].filter((match) => {
    return quoteBetween(flat, match.index, match.index + match[0].length) === quote;
  });
  const only = found.length === 1 ? found[0] : undefined;
  return only ? { from: only.index, to: only.index + only[0].length } : null;
}

const escaped = (letter: string): string => letter.replace(/[\\^$.*+?()[\]{}|/]/u, "\\$&");

const encode = (place: Y.RelativePosition): string => buffer.toBase64(Y.encodeRelativePosition(place));
