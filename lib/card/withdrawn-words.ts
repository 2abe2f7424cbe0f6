/** A withdrawal in words, the same on every screen. */

import { shortDateOf } from "#lib/formats/dates.ts";
import type { Formats } from "#lib/formats/formats.ts";

/** "Withdrawn by Ines, 29 Nov: the firm spring is being replaced." */
export function withdrawnWords(
  of: { readonly byName: string; readonly at: number; readonly reason: string },
  f: Formats,
): string {
  const end = /[.!?]$/.test(of.reason) ? "" : ".";
  return `Withdrawn by ${of.byName}, ${shortDateOf(of.at, f)}: ${of.reason}${end}`;
}

/** What devices go on with once the newest edition of a plan is withdrawn: nothing. */
export const noneInUseWords = (edition: number): string =>
  `No edition is in use: edition ${edition} is withdrawn, devices do not start it, and no earlier edition takes its place. A new sign-off puts one in use.`;
