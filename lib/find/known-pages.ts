/** Pages whose words are at hand (rules, help, months, people, places), found as one types and without asking anybody. Pure. */
import { begins, hasAll, type SoughtWord, textWords } from "./words.ts";

export interface KnownPage {
  /** Also a key: unlike any other's of its list. */
  readonly href: string;
  readonly title: string;
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
  readonly all: readonly SoughtWord[];
}

export const pageIndex = (pages: readonly KnownPage[]): PageIndex =>
  pages.map((page) => ({
    page,
    title: textWords(page.title),
    all: textWords(`${page.title} ${page.text ?? ""} ${page.more ?? ""}`),
  }));

/** Those that have every word, the best first: in the title from its first word on, in the title, elsewhere. */
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

function rankOf({ title }: Indexed, asked: readonly SoughtWord[]): number {
  if (!hasAll(title, asked)) return asked.some((one) => title.some((word) => begins(word, one))) ? 2 : 3;
  const [first] = title;
  return first && asked[0] && begins(first, asked[0]) ? 0 : 1;
}
