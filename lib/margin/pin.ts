/**
 * Pins: a comment keeps hold of its words by two places in the shared text and a quote. The places follow edits; the
 * quote shows whether the words are still those commented on, and finds them again when a line was split around them: only
 * there, and never where the same words stood already. Words that went are gone, whatever is written elsewhere.
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
/** The same words in more places than this: they are not searched for at all. */
const MOST_OTHERS = 20;

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
  const others = quote.length < MIN_SEARCHED_QUOTE ? [] : othersOf(fragment, flat, quote, first);
  return {
    kind: "words",
    itemId,
    from: encode(start),
    to: encode(end),
    quote,
    ...(others.length > 0 ? { others } : {}),
  };
}

/** Where else the quote stands now. */
function othersOf(fragment: Y.XmlFragment, flat: FlatScript, quote: string, own: number): string[] {
  return occurrences(flat, quote)
    .filter(({ from }) => from !== own)
    .slice(0, MOST_OTHERS)
    .flatMap(({ from }) => {
      const place = placeBefore(fragment, flat, from);
      return place === null ? [] : [encode(place)];
    });
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
  const moved = searched(fragment, flat, anchor);
  if (moved !== null) return { state: "here", ...moved };
  return range === null || now === "" ? { state: "gone" } : { state: "changed", ...range, now };
}

/** Whether the words of a pin stand where it says, or somewhere in the script where its places are. Reads only. */
export function isPinOf(fragment: Y.XmlFragment, anchor: WordsAnchor): boolean {
  const flat = flatScript(fragment);
  const pin = pinIn(fragment, flat, anchor);
  return pin.state === "here" || (pin.state === "changed" && occurrences(flat, anchor.quote).length > 0);
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

/**
 * The only place where the quote occurs in the lines that a split of its own line could have made, leaving out where the same
 * words stood when it was pinned; null when there is none, or more than one, or no telling.
 */
function searched(fragment: Y.XmlFragment, flat: FlatScript, anchor: WordsAnchor): Range | null {
  const { quote, others = [] } = anchor;
  if (quote.length < MIN_SEARCHED_QUOTE || others.length >= MOST_OTHERS) return null;
  const lines = linesAround(fragment, [anchor.from, anchor.to]);
  if (lines === null) return null;
  const all = occurrences(flat, quote);
  const taken = others.map((other) => resolve(fragment, flat, other));
  // Once one of those others has moved, what is found may be that one.
  if (taken.some((place) => !all.some(({ from }) => from === place))) return null;
  const found = all.filter(({ from, to }) => {
    const isNear = flatLineAt(flat, from) >= lines.first && flatLineAt(flat, to - 1) <= lines.last;
    return isNear && !taken.includes(from);
  });
  return found.length === 1 ? (found[0] ?? null) : null;
}

/** Every place where a quote stands in the script. */
function occurrences(flat: FlatScript, quote: string): Range[] {
  const letters = [...quote.matchAll(/\{[a-z-]+\}|[\s\S]/gu)].map((m) => m[0]);
  const pattern = letters.map((part) => (part.length > 2 ? "\uFFFC" : part === " " ? "\\s+" : escaped(part))).join("");
  const found = [...flat.text.matchAll(new RegExp(pattern, "gu"))].map((match) => ({
    from: match.index,
    to: match.index + match[0].length,
  }));
  return found.filter(({ from, to }) => quoteBetween(flat, from, to) === quote);
}

/**
 * The lines in which words may be that were split off from those of a pin: its own and the ones beside them. A line that was
 * deleted counts as where it was.
 */
function linesAround(fragment: Y.XmlFragment, encoded: readonly string[]): { first: number; last: number } | null {
  const at = encoded.flatMap((one) => lineOf(fragment, one) ?? []);
  return at.length === 0 ? null : { first: Math.min(...at) - 1, last: Math.max(...at) + 1 };
}

function lineOf(fragment: Y.XmlFragment, encoded: string): number | null {
  const { doc } = fragment;
  if (doc === null) return null;
  try {
    const relative = Y.decodeRelativePosition(buffer.fromBase64(encoded));
    const place = relative.tname === null ? Y.createAbsolutePositionFromRelativePosition(relative, doc) : null;
    return place === null ? null : indexInFragment(fragment, place.type);
  } catch {
    return null;
  }
}

/** The index of the line that a shared type is in; of a deleted line, the one that it would have now. */
function indexInFragment(fragment: Y.XmlFragment, type: Y.AbstractType<unknown>): number | null {
  let line: Y.AbstractType<unknown> | null = type;
  while (line !== null && line.parent !== fragment) line = line.parent as Y.AbstractType<unknown> | null; // a line is in a script
  let before = line?._item?.left ?? null;
  if (!line?._item) return null;
  let index = 0;
  for (; before !== null; before = before.left) if (!before.deleted && before.countable) index += before.length;
  return index;
}

const escaped = (letter: string): string => letter.replace(/[\\^$.*+?()[\]{}|/]/u, "\\$&");

const encode = (place: Y.RelativePosition): string => buffer.toBase64(Y.encodeRelativePosition(place));
