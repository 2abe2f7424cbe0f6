/**
 * In version 1 the theme was one plain value under `head`. Its words move into the shared text when a document is
 * migrated. A device copy from before may still return at any time with a theme set under the old key. Only the server
 * carries it over: two pages doing so would write the words twice.
 */
import * as Y from "yjs";
import { planParts, THEME_OF_V1 } from "./layout.ts";
import { str } from "./values.ts";
import { setText } from "./write.ts";

/** The step to version 2. The old key stays as it was, so that later values under it can be told apart. */
export function themeToText(doc: Y.Doc): void {
  const { head, theme } = planParts(doc);
  const words = str(head.get(THEME_OF_V1));
  if (words !== undefined && theme.length === 0) theme.insert(0, words);
}

interface Late {
  /** Empty where the theme was removed. */
  readonly words: string;
  /** Whether its writer had read the theme that was carried last, and so meant to replace it. */
  readonly replaces: boolean;
}

/**
 * Watches a document of this version for themes that arrive under the old key. Calling the result carries over what has
 * arrived since the last call: in place of the theme it was meant to replace where nobody has written since, otherwise
 * after the words that are there. A value that loses to another under that key is carried too, since it is somebody's
 * words.
 */
export function carryLateThemes(doc: Y.Doc): () => void {
  const { head, theme } = planParts(doc);
  let base = baseOf(head);
  let came: Late[] = [];
  head.observe(({ keysChanged }, transaction) => {
    if (keysChanged.has(THEME_OF_V1)) came.push(...lateIn(transaction, head, base.last));
  });
  return () => {
    if (came.length === 0) return;
    const late = came;
    came = [];
    doc.transact(() => {
      for (const one of late) setText({ doc, origin: "migrate" }, theme, carried(theme.toString(), one, base.words));
    }, "migrate");
    base = baseOf(head);
  };
}

function carried(now: string, { words, replaces }: Late, base: string): string {
  if (now === "" || (replaces && now === base)) return words;
  return words === "" || words === now ? now : `${now}, ${words}`;
}

/** What was carried last, and the id of its struct. */
function baseOf(head: Y.Map<unknown>): { words: string; last: Y.ID | null } {
  return { words: str(head.get(THEME_OF_V1)) ?? "", last: head._map.get(THEME_OF_V1)?.lastId ?? null };
}

/** Must run before the transaction ends: until then a value that another replaced still has its words. */
function lateIn({ beforeState }: Y.Transaction, head: Y.Map<unknown>, base: Y.ID | null): Late[] {
  const fresh: Y.Item[] = [];
  let item: Y.Item | null = head._map.get(THEME_OF_V1) ?? null;
  for (; item !== null; item = item.left)
    if (item.id.clock >= (beforeState.get(item.id.client) ?? 0)) fresh.unshift(item);
  const last = fresh.at(-1);
  const replaces = (one: Y.Item) => same(readBy(one, fresh), base);
  if (!head.has(THEME_OF_V1)) return [{ words: "", replaces: last === undefined || replaces(last) }];
  return fresh.flatMap((one): Late[] => {
    const words = str(one.content.getContent()[one.length - 1]);
    if (words === undefined || fresh.some(({ origin }) => same(origin, one.lastId))) return [];
    return [{ words, replaces: replaces(one) }];
  });
}

/** The value its writer saw, before any others that they wrote in its place. */
function readBy(item: Y.Item, fresh: readonly Y.Item[]): Y.ID | null {
  let { origin } = item;
  for (;;) {
    const before = fresh.find((other) => origin !== null && holds(other, origin));
    if (before === undefined || before === item) return origin;
    origin = before.origin;
  }
}

const holds = ({ id, length }: Y.Item, { client, clock }: Y.ID): boolean =>
  id.client === client && clock >= id.clock && clock < id.clock + length;

const same = (a: Y.ID | null, b: Y.ID | null): boolean => Y.compareIDs(a, b);
