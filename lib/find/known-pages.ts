/** Pages whose words are at hand (rules, help, months, people, places), found as one types and without asking anybody. Pure. */
import { hasAll, type SoughtWord, TITLE_RANKS, type TitleRank, textWords, titleRank } from "./words.ts";

export interface KnownPage {
  /** Also a key: unlike any other's of its list. */
  readonly href: string;
  readonly title: string;
  /** Beside the title, a word or two: what it is part of. */
  readonly beside?: string | undefined;
  /** What else it says, in sentences. */
  readonly text?: string | undefined;
  /** More words by which it is found, which are not shown. */
  readonly more?: string | undefined;
}

/** Prepared for many searches. */
export type PageIndex = readonly Indexed[];
interface Indexed {
  readonly page: KnownPage;
  readonly title: readonly SoughtWord[];
  /** With what it is part of: "settings password". */
  readonly wholeTitle: readonly SoughtWord[];
  readonly all: readonly SoughtWord[];
}

export const pageIndex = (pages: readonly KnownPage[]): PageIndex =>
  pages.map((page) => ({
    page,
    title: textWords(page.title),
    wholeTitle: textWords(`${page.beside ?? ""} ${page.title}`),
    all: textWords(`${page.title} ${page.text ?? ""} ${page.more ?? ""}`),
  }));

/** Those that have every word, the best title first (`titleRank`). */
export function findPages(index: PageIndex, asked: readonly SoughtWord[], most: number): KnownPage[] {
  if (asked.length === 0) return [];
  const found = index.flatMap((one, place) =>
    hasAll(one.all, asked) ? [{ page: one.page, rank: rankOf(one, asked), place }] : [],
  );
  return found
    .sort((a, b) => a.rank - b.rank || a.place - b.place)
    .slice(0, most)
    .map(({ page }) => page);
}

const rankOf = ({ title, wholeTitle }: Indexed, asked: readonly SoughtWord[]): TitleRank => {
  const rank = titleRank(title, asked);
  return rank > TITLE_RANKS.all && hasAll(wholeTitle, asked) ? TITLE_RANKS.all : rank;
};
