/**
 * A script as one string with a place for everything in it, made straight from the shared text. It needs no editor, so
 * pins of items that nobody has open are followed too. Offsets count as an editor counts: a letter (UTF-16 unit) is
 * one, a live field is one, and there is one between two lines.
 */
import * as Y from "yjs";
import { LIVE_FIELD } from "#lib/doc/layout.ts";

/** Stands for a live field in `FlatScript.text`. */
const FIELD_MARK = "\uFFFC";

type SharedType = object;

export interface FlatScript {
  /** Lines separated by line feeds. */
  readonly text: string;
  /** Offset of each line's first letter. */
  readonly lineStarts: readonly number[];
  /** Offset of a live field -> its name. */
  readonly fields: ReadonlyMap<number, string>;
  /** Where the children of a shared type begin, with one more entry for its end. Texts have one entry. */
  readonly places: ReadonlyMap<SharedType, readonly number[]>;
}

/** Reads only; parts that are neither text nor live field take no room. */
export function flatScript(fragment: Y.XmlFragment): FlatScript {
  const fields = new Map<number, string>();
  const places = new Map<SharedType, readonly number[]>();
  const lineStarts: number[] = [];
  let text = "";
  for (const line of fragment.toArray()) {
    if (lineStarts.length > 0) text += "\n";
    lineStarts.push(text.length);
    if (!(line instanceof Y.XmlElement)) continue;
    const starts: number[] = [];
    for (const child of line.toArray()) {
      starts.push(text.length);
      if (child instanceof Y.XmlText) {
        places.set(child, [text.length]);
        text += lettersOf(child);
      } else if (child instanceof Y.XmlElement && child.nodeName === LIVE_FIELD) {
        fields.set(text.length, String(child.getAttribute("name")));
        text += FIELD_MARK;
      }
    }
    places.set(line, [...starts, text.length]);
  }
  places.set(fragment, [...lineStarts, text.length]);
  return { text, lineStarts, fields, places };
}

function lettersOf(text: Y.XmlText): string {
  const delta: { insert: unknown }[] = text.toDelta();
  return delta.map((d) => (typeof d.insert === "string" ? d.insert : "")).join("");
}

/** Offset of index `index` in a shared type; null when the type is not part of this script. */
export function flatOffsetOf(flat: FlatScript, type: SharedType, index: number): number | null {
  const starts = flat.places.get(type);
  if (starts === undefined) return null;
  if (type instanceof Y.XmlText) return (starts[0] ?? 0) + index;
  return starts[Math.min(index, starts.length - 1)] ?? null;
}

/** The words between two offsets as they are quoted: live fields as `{name}`, whitespace as single spaces. */
export function quoteBetween(flat: FlatScript, from: number, to: number): string {
  let words = "";
  for (let i = from; i < to; i++) words += flat.fields.has(i) ? `{${flat.fields.get(i)}}` : (flat.text[i] ?? "");
  return plainSpace(words);
}

const plainSpace = (words: string): string => words.replace(/\s+/gu, " ").trim();

/** The line an offset is in. */
export function flatLineAt(flat: FlatScript, offset: number): number {
  let line = 0;
  while (line + 1 < flat.lineStarts.length && (flat.lineStarts[line + 1] ?? Infinity) <= offset) line++;
  return line;
}

export function lineEnd(flat: FlatScript, line: number): number {
  const next = flat.lineStarts[line + 1];
  return next === undefined ? flat.text.length : next - 1;
}
