/** The texts of help in order, which of them help with a place, and all of it as pages that can be found. Pure. */
import type { KnownPage } from "#lib/find/known-pages.ts";
import { GLOSSARY, type GlossaryWord } from "./glossary.ts";
import { plainHelp } from "./help-text.ts";
import { MONTH_AND_FLOOR } from "./how-tos/month-and-floor.ts";
import { READING_AND_SIGNING } from "./how-tos/reading.ts";
import { STUDIO_AND_YOU } from "./how-tos/studio.ts";
import type { HowTo } from "./how-tos/types.ts";
import { WRITING } from "./how-tos/writing.ts";

export const HOW_TOS: readonly HowTo[] = [...WRITING, ...READING_AND_SIGNING, ...MONTH_AND_FLOOR, ...STUDIO_AND_YOU];

export const howToBySlug = (slug: string): HowTo | undefined => HOW_TOS.find((one) => one.slug === slug);

/** Pages that are no how-to. */
const OTHER_PAGES: readonly KnownPage[] = [
  { href: "/help/keys", title: "Keys", text: "Every key, place by place.", more: "keyboard shortcuts" },
  { href: "/help/words", title: "Words", text: "What Springline’s words mean.", more: "glossary" },
  {
    href: "/help/safety",
    title: "Safety: what Springline does not do",
    text: "It does arithmetic and reminds; it gives no medical advice.",
    more: "cautions clinician manual licensed injury pregnancy",
  },
];

const pageOf = (one: HowTo): KnownPage => ({
  ...{ href: `/help/${one.slug}`, title: one.title, text: one.about },
  more: one.body.map(plainHelp).join(" "),
});

export const HELP_PAGES: readonly KnownPage[] = [...HOW_TOS.map(pageOf), ...OTHER_PAGES];

/** The words that stand on screens. */
export const USER_GLOSSARY: readonly GlossaryWord[] = GLOSSARY.filter(({ inside }) => !inside);

/** Of an address: "look-again" of "look again". */
export const wordId = (word: string): string => word.toLowerCase().replace(/[^a-z]+/g, "-");

export const GLOSSARY_PAGES: readonly KnownPage[] = USER_GLOSSARY.map(({ word, means }) => ({
  href: `/help/words#${wordId(word)}`,
  title: word,
  text: means.replaceAll("_", ""),
}));

/** At most, beside the keys of a place. */
const MOST_HERE = 6;

/** What helps with the place of a path: what is most about it first, what helps everywhere last. */
export function howTosAt(path: string): KnownPage[] {
  const found = HOW_TOS.flatMap((one) => {
    // What a text names first it is most about.
    const place = one.at.findIndex((at) => isAt(at, path));
    return place < 0 ? [] : [{ one, place, everywhere: one.at[place] === "/**" }];
  });
  return found
    .sort((a, b) => Number(a.everywhere) - Number(b.everywhere) || a.place - b.place)
    .slice(0, MOST_HERE)
    .map(({ one }) => pageOf(one));
}

/** "*" is one part of a path, "/**" all that follows. */
function isAt(at: string, path: string): boolean {
  const [wanted, given] = [at.split("/").slice(1), path.split("/").slice(1)];
  const open = wanted.at(-1) === "**";
  const fixed = open ? wanted.slice(0, -1) : wanted;
  if (open ? given.length < fixed.length : given.length !== fixed.length) return false;
  return fixed.every((part, i) => part === "*" || part === given[i]);
}
