/**
 * Help as plain data. In its texts braces name what the product says or does, so that no text can say something else:
 *
 *   {key:plan.rail.fit}   the key of a command in a place of its table; {key:floor.next} of an act on the floor
 *   {do:plan.fit}         the words on a command's button
 *   {says:Sign off}       words that stand on the screen as they are
 *   {to:/studio|Studio}   a link to a page of the studio
 */

/** A paragraph, numbered steps, a picture, or a line that stands out. */
export type HelpBlock =
  | string
  | { readonly steps: readonly string[] }
  | { readonly picture: PictureName }
  | { readonly note: string };

export const PICTURES = {
  rail: "A class on its rail: each move is a plate as tall as its time, with springs, figure and script; between plates stands the change.",
  fit: "Fit to length: the times now and then, side by side, and the buttons that keep a time or take the new ones.",
  change: "An open plate: over its script each step of the change into it, said or not said.",
  balance: "The balance of a class: a body shaded by how much each group of muscles works, and left set against right.",
  review: "Review and sign: what prevents a signature, what is looked at again, and the plan as it will be signed.",
  month: "A month: one line a day, the classes on it, and beside it how each group of muscles works and rests.",
  floor: "The floor during a class: what is now, what to say, the seconds left, and what comes next.",
  readings: "Scale readings of a spring: what to heed before one measures, and the table for travel and force.",
} as const;
export type PictureName = keyof typeof PICTURES;

export const HELP_GROUPS = [
  "Writing a class",
  "Reading and signing",
  "The month",
  "The floor",
  "The studio",
  "You",
] as const;
type HelpGroup = (typeof HELP_GROUPS)[number];

export interface HowTo {
  /** Of its address: /help/<slug>. */
  readonly slug: string;
  readonly title: string;
  /** What it is about, in one sentence. */
  readonly about: string;
  readonly group: HelpGroup;
  /** Places that it helps with: paths, "*" for any part of one, "/**" for whatever follows. */
  readonly at: readonly string[];
  readonly body: readonly HelpBlock[];
}
