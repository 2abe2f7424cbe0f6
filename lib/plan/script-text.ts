/** The text of a cue line in a plan file: words with live fields `{name}`, a plain brace written `{{`. */
import { LIVE_FIELDS, type LiveField } from "./schema.ts";

export type ScriptPiece = { text: string } | { field: LiveField };
export type ScriptPieces =
  | { ok: true; pieces: ScriptPiece[] }
  /** `at` is the index of the brace. */
  | { ok: false; at: number; unknown: string };

/** Splits a line of a plan file into text and live fields. Reports an unknown field and its place instead of throwing. */
export function parseScriptText(source: string): ScriptPieces {
  const pieces: ScriptPiece[] = [];
  let text = "";
  let i = 0;
  while (i < source.length) {
    const brace = source.indexOf("{", i);
    text += source.slice(i, brace < 0 ? undefined : brace);
    if (brace < 0) break;
    if (source[brace + 1] === "{") {
      text += "{";
      i = brace + 2;
      continue;
    }
    const end = source.indexOf("}", brace);
    const name = end < 0 ? source.slice(brace + 1) : source.slice(brace + 1, end);
    const field = LIVE_FIELDS.find((f) => f === name);
    if (!field || end < 0) return { ok: false, at: brace, unknown: name };
    if (text) pieces.push({ text });
    pieces.push({ field });
    text = "";
    i = end + 1;
  }
  if (text) pieces.push({ text });
  return { ok: true, pieces };
}

/** Plain words in the form of a plan file. */
export const escapeScriptText = (text: string): string => text.replaceAll("{", "{{");
