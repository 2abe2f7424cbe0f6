/** What the parts about one script come to in the script as it is now: which fit, and what is to be done to which line. */
import { KIND_WORDS } from "#lib/plan/cue-words.ts";
import type { CueKind, ScriptLine } from "#lib/plan/schema.ts";
import { type LinePart, type LineRef, type LineWords, MOST_LINE_CHARACTERS, MOST_LINES, type PartOf } from "./parts.ts";
import { mergedText } from "./words-diff.ts";

/** Rows are places among the lines with words, as they are before any of the steps. */
export type ScriptStep =
  | { readonly does: "change"; readonly row: number; readonly words: LineWords }
  | { readonly does: "add"; readonly words: LineWords; readonly after: number | null }
  | { readonly does: "move"; readonly row: number; readonly after: number | null }
  | { readonly does: "remove"; readonly row: number };

/** `fits` with the step to take; otherwise why there is none. */
export type PartVerdict<Step> =
  | { readonly state: "fits"; readonly step: Step }
  | { readonly state: "already" | "changed"; readonly why: string };

export interface Script {
  readonly lines: readonly ScriptLine[];
  /** The document's names of them; undefined where they are not known. */
  readonly ids: readonly string[] | undefined;
}

const ALREADY = "It is like this already.";
const changed = (why: string): PartVerdict<never> => ({ state: "changed", why });
const already: PartVerdict<never> = { state: "already", why: ALREADY };

export function judgeLine(script: Script, part: LinePart): PartVerdict<ScriptStep> {
  switch (part.kind) {
    case "line":
      return judgeChanged(script, part);
    case "line-added":
      return judgeAdded(script, part);
    case "line-removed":
      return judgeRemoved(script, part);
    case "line-moved":
      return judgeMoved(script, part);
  }
}

function judgeChanged(script: Script, { line, becomes }: PartOf<"line">): PartVerdict<ScriptStep> {
  const row = rowOf(script, line);
  const now = row === undefined ? undefined : script.lines[row];
  if (row === undefined || !now) return lineGone(script, line, becomes);
  if (now.kind === becomes.kind && now.text === becomes.text) return already;
  const kind = mergedKind(line.kind, now.kind, becomes.kind);
  const text = mergedText(line.text, now.text, becomes.text);
  if (kind === null || text === null || text.length > MOST_LINE_CHARACTERS) return lineChanged(now);
  if (now.kind === kind && now.text === text) return already;
  return { state: "fits", step: { does: "change", row, words: { kind, text } } };
}

/** Null where both chose another kind, and not the same one. */
function mergedKind(was: CueKind, now: CueKind, becomes: CueKind): CueKind | null {
  if (becomes === was) return now;
  return now === was || now === becomes ? becomes : null;
}

function judgeAdded(script: Script, { after, becomes, same }: PartOf<"line-added">): PartVerdict<ScriptStep> {
  if (script.lines.filter((line) => says(line, becomes)).length > same) return already;
  if (script.lines.length >= MOST_LINES)
    return changed(`The script has ${MOST_LINES} lines, the most that it can hold.`);
  const row = after === null ? null : rowOf(script, after);
  if (row === undefined) return changed(`The line that it was to follow is no longer there: ${quoted(after)}.`);
  return { state: "fits", step: { does: "add", words: becomes, after: row } };
}

function judgeRemoved(script: Script, { line }: PartOf<"line-removed">): PartVerdict<ScriptStep> {
  const row = rowOf(script, line);
  const now = row === undefined ? undefined : script.lines[row];
  if (row === undefined || !now) return { state: "already", why: "This line is no longer there, or it was changed." };
  return says(now, line) ? { state: "fits", step: { does: "remove", row } } : lineChanged(now);
}

function judgeMoved(script: Script, { line, after, before }: PartOf<"line-moved">): PartVerdict<ScriptStep> {
  const row = rowOf(script, line);
  if (row === undefined) return lineGone(script, line, line);
  const above = after === null ? -1 : rowOf(script, after);
  if (above === undefined) return changed(`The line that it was to follow is no longer there: ${quoted(after)}.`);
  const below = before === null ? undefined : rowOf(script, before);
  const end = below ?? script.lines.length;
  if (end <= above || row === above || row === below)
    return changed("The lines around it were put into another order meanwhile.");
  if (row > above && row < end) return already;
  return { state: "fits", step: { does: "move", row, after: above < 0 ? null : above } };
}

/** By the document's name; else the nearest line with the same kind and words. Undefined where there is none. */
function rowOf({ lines, ids }: Script, ref: LineRef): number | undefined {
  const named = ref.id === undefined ? -1 : (ids?.indexOf(ref.id) ?? -1);
  if (named >= 0) return named;
  let nearest: number | undefined;
  for (const [row, line] of lines.entries())
    if (says(line, ref) && (nearest === undefined || Math.abs(row - ref.index) < Math.abs(nearest - ref.index)))
      nearest = row;
  return nearest;
}

export const says = (line: LineWords, other: LineWords): boolean =>
  line.kind === other.kind && line.text === other.text;

function lineGone(script: Script, line: LineRef, becomes: LineWords): PartVerdict<never> {
  if (script.lines.some((other) => says(other, becomes))) return already;
  return changed(`This line was changed or removed meanwhile: ${quoted(line)}.`);
}

const lineChanged = (now: ScriptLine): PartVerdict<never> =>
  changed(`This line was changed meanwhile. It now says (${KIND_WORDS[now.kind].toLowerCase()}): ${quoted(now)}.`);

const LONGEST_QUOTE = 160;
const quoted = (line: { readonly text: string } | null): string => {
  const chars = [...(line?.text ?? "")];
  return chars.length > LONGEST_QUOTE ? `“${chars.slice(0, LONGEST_QUOTE - 1).join("")}…”` : `“${chars.join("")}”`;
};

/** The steps in the order in which they are taken: what comes after one line is added from the last to the first. */
export function inTurn(steps: readonly ScriptStep[]): readonly ScriptStep[] {
  const places = steps.filter(({ does }) => does === "add" || does === "move").reverse();
  const of = (does: ScriptStep["does"]) => steps.filter((step) => step.does === does);
  return [...of("change"), ...places, ...of("remove")];
}

/** The lines after the steps. The document takes the same steps in `lib/doc/take-proposal.ts`. */
export function steppedLines(lines: readonly ScriptLine[], steps: readonly ScriptStep[]): ScriptLine[] {
  const rows = lines.map((line) => ({ line }));
  const list = [...rows];
  const place = (row: { line: ScriptLine }, after: number | null) => {
    const above = after === null ? undefined : rows[after];
    list.splice(above === undefined ? 0 : list.indexOf(above) + 1, 0, row);
  };
  for (const step of inTurn(steps)) {
    const row = step.does === "add" ? { line: { ...step.words } } : rows[step.row];
    if (!row) continue;
    if (step.does === "change") row.line = { ...row.line, ...step.words };
    else if (step.does === "add") place(row, step.after);
    else {
      const at = list.indexOf(row);
      if (at >= 0) list.splice(at, 1);
      if (step.does === "move") place(row, step.after);
    }
  }
  return list.map(({ line }) => line);
}
