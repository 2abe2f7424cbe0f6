/**
 * How large a shared document may grow: no more than the plan file and the month file hold, so that whatever is written
 * together can be exported. What is already there stays, and can always be shortened. `server/sync/size.ts` holds pages
 * to it.
 */
import type * as Y from "yjs";

export interface Bounds {
  /** Root map of the entries: items of a plan, classes of a month. */
  readonly entries: string;
  /** Entries that are not taken out. */
  readonly most: number;
  /** Entries including those taken out, which stay for good. Our own choice. */
  readonly mostEver: number;
  /** Letters and values of the whole document. Our own choice. */
  readonly characters: number;
  /**
   * Structs of yjs that it is stored in: a word typed in one go is one, and so is a run of values that were set one
   * after another and are gone. The cost of opening, sending and storing it depends on these. Our own choice, three
   * times what the longest plan file needs.
   */
  readonly pieces: number;
  /** Root texts with a bound of their own, in characters. */
  readonly texts: Readonly<Record<string, number>>;
}

/** `items` and `notes` as in the plan file. */
export const PLAN_BOUNDS: Bounds = {
  entries: "items",
  most: 2000,
  mostEver: 8000,
  characters: 2_000_000,
  pieces: 100_000,
  texts: { title: 2000, notes: 100_000 },
};
/** As many classes as the month file holds. */
export const MONTH_BOUNDS: Bounds = {
  entries: "slots",
  most: 1000,
  mostEver: 4000,
  characters: 1_000_000,
  pieces: 50_000,
  texts: {},
};

/** The page warns from this share of a bound on. */
const NEAR = 0.9;

/** Entries that are not taken out. */
export function countLiving(doc: Y.Doc, bounds: Bounds): number {
  let living = 0;
  for (const entry of doc.getMap<Y.Map<unknown>>(bounds.entries).values())
    if (entry.get?.("deleted") === undefined) living++;
  return living;
}

/** Structs that a document is stored in now. */
export function countPieces(doc: Y.Doc): number {
  let sum = 0;
  for (const structs of doc.store.clients.values()) sum += structs.length;
  return sum;
}

/** What a page says near or beyond a bound; undefined far from all of them. */
export function nearBounds(doc: Y.Doc, bounds: Bounds): string | undefined {
  const what = bounds.entries === "items" ? "items" : "classes";
  const some = doc.getMap(bounds.entries).size >= bounds.most * NEAR;
  const living = some ? countLiving(doc, bounds) : 0;
  if (living >= bounds.most * NEAR) return sentence(`${number(living)} of at most ${number(bounds.most)} ${what}`);
  for (const [root, most] of Object.entries(bounds.texts)) {
    const { length } = doc.getText(root);
    if (length >= most * NEAR)
      return sentence(`${number(length)} of at most ${number(most)} characters in its ${root}`);
  }
  const pieces = countPieces(doc);
  if (pieces < bounds.pieces * NEAR) return undefined;
  if (bounds.entries !== "items")
    return sentence(`${number(pieces)} of at most ${number(bounds.pieces)} pieces of writing`);
  return `This plan has been changed almost as many times as the server can store (${number(pieces)} of ${number(bounds.pieces)} pieces). Duplicate it on your desk and continue in the copy, which starts afresh.`;
}

const sentence = (held: string) => `This holds ${held}: beyond that, only changes that shorten it are saved.`;
const number = (n: number) => n.toLocaleString("en-GB");
