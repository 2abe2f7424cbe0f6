/** What was found, by kind, as the dialog shows it. Pure. */
import type { FoundByWords, FoundPlan } from "#lib/find/found.ts";
import { findPages, type KnownPage, type PageIndex, pageIndex } from "#lib/find/known-pages.ts";
import { excerptAround, type SoughtWord } from "#lib/find/words.ts";
import { GLOSSARY_PAGES, HELP_PAGES } from "#lib/help/help-pages.ts";
import { STATE_WORDS } from "../state-words.ts";
import type { FindAnswers } from "./use-answers.ts";

/** One thing to open. */
export interface FoundEntry {
  readonly href: string;
  readonly title: string;
  /** Beside the title: what kind of thing it is, in a few words. */
  readonly beside: string;
  /** Under it, with the words that were looked for. */
  readonly under: string;
  /** Places in it, each with a line of words. */
  readonly lines: readonly { readonly href: string; readonly words: string; readonly text: string }[];
}

export interface FoundGroup {
  readonly title: string;
  readonly entries: readonly FoundEntry[];
  /** How many more there are, in words. */
  readonly more: string;
}

/** Of each kind that is searched in the page. */
const MOST_PAGES = 4;

const HELP_INDEX = pageIndex(HELP_PAGES);
const GLOSSARY_INDEX = pageIndex(GLOSSARY_PAGES);

/** Without those that are empty. What the server answers stands first, so that nothing moves when the rest is known. */
export function groupsFound({ asked, found, index }: FindAnswers): FoundGroup[] {
  const known: readonly (readonly [string, PageIndex])[] = [
    ["Months and classes", index.classes],
    ["Signed plans", index.signed],
    ["People", index.people],
    ["Rules", index.rules],
    ["Help", HELP_INDEX],
    ["Words", GLOSSARY_INDEX],
  ];
  const groups = [
    ...(found ? serverGroups(found) : []),
    ...known.map(([title, pages]) => ({ title, entries: entriesOf(pages, asked), more: "" })),
  ];
  return groups.filter(({ entries }) => entries.length > 0);
}

const entriesOf = (pages: PageIndex, asked: readonly SoughtWord[]): FoundEntry[] =>
  findPages(pages, asked, MOST_PAGES).map((page: KnownPage) => ({
    ...{ href: page.href, title: page.title, beside: "", lines: [] },
    under: excerptAround(page.text ?? "", asked),
  }));

const moreWords = (count: number): string => (count > 0 ? `and ${count} more` : "");

function serverGroups({ plans, morePlans, moves, moreMoves }: FoundByWords): FoundGroup[] {
  return [
    { title: "Plans", entries: plans.map(planEntry), more: moreWords(morePlans) },
    {
      title: "Moves",
      entries: moves.map(({ href, name, line, archived }) => ({
        ...{ href, title: name, beside: archived ? "taken out of the library" : "", under: line, lines: [] },
      })),
      more: moreWords(moreMoves),
    },
  ];
}

function planEntry({ href, title, ownerName, state, archived, lines, more }: FoundPlan): FoundEntry {
  const beside = [archived ? "archived" : STATE_WORDS[state], ...(ownerName ? [ownerName] : [])].join(", ");
  // A plan that was found by its words opens where they are.
  const [first] = lines;
  const place = first && lines.every((line) => line.place !== "title") ? first.href : href;
  const shown = lines.map((line) => ({ href: line.href, words: PLACE_WORDS[line.place], text: line.text }));
  return { href: place, title, beside, under: more > 0 ? `${more} more in it` : "", lines: shown };
}

const PLACE_WORDS = { title: "title", theme: "theme", item: "item", said: "said", notes: "notes" } as const;
