/**
 * Turns plain text from elsewhere into cue lines: one line of text is one cue line, its kind guessed from a word before
 * a colon. Bounded, because a pasted book would be too large a change to save.
 */

import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import { CUE_KINDS, type CueKind } from "#lib/plan/schema.ts";
import { parseScriptText, type ScriptPiece } from "#lib/plan/script-text.ts";

export const MAX_PASTED_LINES = 200;
/** The plan file's limit for one line, in UTF-16 units. */
export const MAX_LINE_LENGTH = 2000;
export const MAX_PASTED_LENGTH = 20_000;

export interface PastedLine {
  /** Null where nothing in the text says which. */
  readonly kind: CueKind | null;
  readonly pieces: readonly ScriptPiece[];
}
export interface Pasted {
  readonly lines: readonly PastedLine[];
  /** How many characters did not fit and were left out; usually 0. */
  readonly leftOut: number;
}

const PREFIXES: Readonly<Record<string, CueKind>> = {
  ...Object.fromEntries(CUE_KINDS.map((kind): [string, CueKind] => [kind, kind])),
  ...Object.fromEntries(CUE_KINDS.map((kind): [string, CueKind] => [KIND_WORDS[kind], kind])),
  "set up": "setup",
  breathe: "breath",
  breathing: "breath",
  feel: "focus",
  caution: "safety",
  care: "safety",
  regression: "easier",
  progression: "harder",
};

/**
 * Splits text into lines. Blank lines are dropped, overlong ones break at a space, and `{name}` becomes the live field
 * of that name.
 */
export function linesFromText(text: string): Pasted {
  const wanted = text.replaceAll("\r\n", "\n").replaceAll("\r", "\n");
  const taken = cut(wanted, MAX_PASTED_LENGTH);
  const whole = taken.split(/[\n\u2028\u2029]/).map(clean);
  // The first line continues at the caret and the last runs up to what follows, so both keep their outer spaces.
  const chunks = whole.flatMap((line, i) => {
    const start = i === 0 ? line : line.trimStart();
    return broken(i === whole.length - 1 ? start : start.trimEnd());
  });
  const kept = chunks.slice(0, MAX_PASTED_LINES);
  const leftOut = wanted.length - taken.length + chunks.slice(MAX_PASTED_LINES).join("").length;
  return { lines: kept.map(toLine), leftOut };
}

/** A plan file holds no control characters and no lone surrogates. */
const clean = (line: string): string => line.replace(/[\p{Cc}\p{Cs}]+/gu, " ");

function cut(text: string, at: number): string {
  if (text.length <= at) return text;
  const code = text.charCodeAt(at - 1);
  return text.slice(0, code >= 0xd800 && code <= 0xdbff ? at - 1 : at);
}

function broken(line: string): string[] {
  const parts: string[] = [];
  let rest = line;
  while (rest.length > MAX_LINE_LENGTH) {
    const space = rest.lastIndexOf(" ", MAX_LINE_LENGTH);
    const part = cut(rest, space > 0 ? space : MAX_LINE_LENGTH);
    parts.push(part);
    rest = rest.slice(part.length).trimStart();
  }
  return rest.trim() === "" ? parts : [...parts, rest];
}

function toLine(line: string): PastedLine {
  const match = /^([A-Za-z][A-Za-z -]{1,14}?)\s*[:–—]\s+(\S.*)$/u.exec(line);
  const kind = match ? PREFIXES[(match[1] ?? "").toLowerCase()] : undefined;
  const words = kind === undefined ? line : (match?.[2] ?? line);
  const parsed = parseScriptText(words);
  return { kind: kind ?? null, pieces: parsed.ok ? parsed.pieces : [{ text: words }] };
}
