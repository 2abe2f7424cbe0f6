/** Writing WebVTT: timestamps, safe text, blocks. Source: W3C WebVTT, "WebVTT file structure" (writer's rules). */

/** One cue to be written. Seconds from the start of the media; `to` above `from`. */
export interface VttCue {
  readonly id: string;
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/**
 * `hh:mm:ss.ttt`, hours always written and of two digits or more. Rounded to the millisecond.
 * Throws RangeError for a time below zero or not finite.
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
 * Text as a cue may hold it: one line, `&`, `<` and `>` escaped, so that no tag, no entity and no arrow can arise from
 * what somebody wrote. NUL is taken out, since a reader would replace it.
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
 * A whole file. Cues are put in order of time, an enclosing one first; those with no time or no words are left out.
 * `notes`: sentences for whoever opens the file, as a comment block before the first cue; a player shows none of it.
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
