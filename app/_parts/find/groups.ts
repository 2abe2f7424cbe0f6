/** What was found, by kind, as the dialog shows it. Pure. */
import type { FoundByWords, FoundPlan } from "#lib/find/found.ts";
import { findPages, type KnownPage, type PageIndex, pageIndex } from "#lib/find/known-pages.ts";
import { excerptAround, type SoughtWord, TITLE_RANKS, type TitleRank, textWords, titleRank } from "#lib/find/words.ts";
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
const MOST_PAGES = 5;

const HELP_INDEX = pageIndex(HELP_PAGES);
const GLOSSARY_INDEX = pageIndex(GLOSSARY_PAGES);

/**
 * Without those that are empty. A kind that has the title that was typed stands first, then those with a title that begins so;
 * of equals what the server answers, so that little moves when the rest is known.
 */
export function groupsFound({ asked, found, index }: FindAnswers): FoundGroup[] {
  const known: readonly (readonly [string, PageIndex])[] = [
    ["Pages", index.pages],
    ["Months and classes", index.classes],
    ["Rooms", index.rooms],
    ["Signed plans", index.signed],
    ["People", index.people],
    ["Rules", index.rules],
    ["Help", HELP_INDEX],
    ["Words", GLOSSARY_INDEX],
  ];
  const groups = [
    ...(found ? serverGroups(found, asked) : []),
    ...known.map(([title, pages]) => ({ title, entries: entriesOf(pages, asked), more: "" })),
  ];
  return groups
    .filter(({ entries }) => entries.length > 0)
    .map((group) => ({ group, rank: bestRank(group, asked) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ group }) => group);
}

/** Beyond a title that begins with the words the kinds keep their order. */
function bestRank({ entries }: FoundGroup, asked: readonly SoughtWord[]): TitleRank {
  const best = Math.min(...entries.map(({ title }) => titleRank(textWords(title), asked))) as TitleRank; // of one of them
  return best > TITLE_RANKS.begins ? TITLE_RANKS.all : best;
}

const entriesOf = (pages: PageIndex, asked: readonly SoughtWord[]): FoundEntry[] =>
  findPages(pages, asked, MOST_PAGES).map((page: KnownPage) => ({
    ...{ href: page.href, title: page.title, beside: page.beside ?? "", lines: [] },
    under: excerptAround(page.text ?? "", asked),
  }));

const moreWords = (count: number): string => (count > 0 ? `and ${count} more` : "");

function serverGroups(found: FoundByWords, asked: readonly SoughtWord[]): FoundGroup[] {
  const { plans, morePlans, moves, moreMoves } = found;
  return [
    { title: "Plans", entries: plans.map((plan) => planEntry(plan, asked)), more: moreWords(morePlans) },
    {
      title: "Moves",
      entries: moves.map(({ href, name, line, archived }) => ({
        ...{ href, title: name, beside: archived ? "taken out of the library" : "", under: line, lines: [] },
      })),
      more: moreWords(moreMoves),
    },
  ];
}

function planEntry(plan: FoundPlan, asked: readonly SoughtWord[]): FoundEntry {
  const { href, title, ownerName, state, archived, lines, more } = plan;
  const beside = [archived ? "archived" : STATE_WORDS[state], ...(ownerName ? [ownerName] : [])].join(", ");
  // A plan that was found by what it says opens where it says so.
  const byTitle = titleRank(textWords(title), asked) <= TITLE_RANKS.all;
  const place = byTitle ? href : (lines[0]?.href ?? href);
  const shown = lines.map((line) => ({ href: line.href, words: PLACE_WORDS[line.place], text: line.text }));
  return { href: place, title, beside, under: more > 0 ? `${more} more in it` : "", lines: shown };
}

const PLACE_WORDS = { title: "title", theme: "theme", item: "item", said: "said", notes: "notes" } as const;
