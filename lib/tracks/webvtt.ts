/** Writes WebVTT: timestamps, safe text, blocks. Source: W3C WebVTT, "WebVTT file structure" (rules for writers). */

/** A cue to write. Seconds from the start of the media; `to` is above `from`. */
export interface VttCue {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/**
 * `hh:mm:ss.ttt`, always with hours, of two digits or more. Rounded to the millisecond.
 * Throws RangeError for a negative or non-finite time.
 */
export function vttTimestamp(seconds: number): string {
  if (!Number.isFinite(seconds) || seconds < 0) throw new RangeError(`not a time on a track: ${seconds}`);
  const ms = Math.round(seconds * 1000);
  const two = (n: number) => String(n).padStart(2, "0");
  const clock = [Math.floor(ms / 3_600_000), Math.floor(ms / 60_000) % 60, Math.floor(ms / 1000) % 60]
    .map(two)
    .join(":");
  return `${clock}.${String(ms % 1000).padStart(3, "0")}`;
}

/**
 * Text for a cue: one line with `&`, `<` and `>` escaped, so that what people wrote can never become a tag, an entity or an
 * arrow. NUL is removed, since a reader would replace it.
 */
export const vttText = (text: string): string =>
  text
    .replaceAll("\0", "")
    .replace(/\s+/g, " ")
    .trim()
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;");

/**
 * A whole file. Cues are sorted by time, enclosing ones first; cues without time or words are left out. `notes`: sentences
 * in a comment block before the first cue, which players do not show.
 */
export function vttFile(title: string, cues: readonly VttCue[], notes: readonly string[] = []): string {
  const written = cues
    .map((cue) => ({ ...cue, text: vttText(cue.text) }))
    .filter((cue) => cue.text !== "" && Math.round(cue.to * 1000) > Math.round(cue.from * 1000))
    .sort((a, b) => a.from - b.from || b.to - a.to);
  const blocks = written.map(
    (cue) => `${cue.id}\n${vttTimestamp(cue.from)} --> ${vttTimestamp(cue.to)}\n${cue.text}\n`,
  );
  const comment = notes.length === 0 ? [] : [`NOTE\n${notes.map((note) => `${vttText(note)}\n`).join("")}`];
  return [`WEBVTT ${vttText(title)}`.trimEnd(), "\n", ...[...comment, ...blocks].map((block) => `\n${block}`)].join("");
}
