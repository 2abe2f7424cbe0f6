/**
 * Words that somebody is typing about a plan and has not sent: a comment, a reply, a note to a step. They belong to their place,
 * not to the field, so that they outlive a field that leaves the page: another plate was opened, the thread settled, the finding
 * mended, the plate taken out, the dialog closed. Kept in this tab until they are sent or discarded.
 */
import type { Anchor } from "#lib/protocol/messages.ts";
import type { Finding } from "#lib/rules/define/types.ts";

/** Where words are typed. */
export interface TypedPlace {
  /** Of the place, one of `PLACE`. */
  readonly place: string;
  /** What the field is called. */
  readonly label: string;
  /** The items that it is about; with all of them taken out, the place has gone. None: it cannot go. */
  readonly items: readonly string[];
  /** What a comment on words is pinned to. */
  readonly anchor?: Anchor;
  /** The finding that it is about, as it was. */
  readonly finding?: Finding;
  /** The round of reading in which it was begun. */
  readonly round?: number | undefined;
}

export interface Typed extends TypedPlace {
  /** "" only while its field is on the page. */
  readonly words: string;
}

/** Keys of places. */
export const PLACE = {
  plan: "plan",
  item: (itemId: string) => `item/${itemId}`,
  change: (itemId: string) => `change/${itemId}`,
  words: (itemId: string) => `words/${itemId}`,
  finding: (key: string) => `finding/${key}`,
  accept: (key: string) => `accept/${key}`,
  reply: (threadId: string) => `reply/${threadId}`,
  offer: "offer",
  returning: "return",
  mainPoints: "main-points",
  signing: "sign",
} as const;

/** A tab's own store; null where there is none. */
type Store = Pick<Storage, "getItem" | "setItem" | "removeItem"> | null;

export class TypedWords {
  private all: readonly Typed[];
  private readonly open = new Map<string, number>();
  private readonly listeners = new Set<() => void>();

  constructor(
    private readonly key: string,
    private readonly store: Store,
  ) {
    this.all = stored(key, store);
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  /** Also of fields that are open and empty. */
  readonly list = (): readonly Typed[] => this.all;

  at(place: string): Typed | undefined {
    return this.all.find((one) => one.place === place);
  }
  wordsAt(place: string): string {
    return this.at(place)?.words ?? "";
  }

  /** A field for the place is on the page until the answer is called. */
  enter(at: TypedPlace): () => void {
    this.open.set(at.place, (this.open.get(at.place) ?? 0) + 1);
    if (!this.at(at.place)) this.put({ ...at, words: "" });
    return () => {
      const left = (this.open.get(at.place) ?? 1) - 1;
      this.open.set(at.place, left);
      if (left === 0 && this.wordsAt(at.place).trim() === "") this.remove(at.place);
    };
  }

  keep(at: TypedPlace, words: string): void {
    const before = this.at(at.place);
    // The round in which they were begun.
    const round = before && before.words.trim() !== "" ? before.round : at.round;
    if (words.trim() === "" && !this.open.get(at.place)) this.remove(at.place);
    else this.put({ ...at, round, words });
  }

  /** Sent, or not wanted any more. */
  drop(place: string): void {
    const one = this.at(place);
    if (one && this.open.get(place)) this.put({ ...one, words: "" });
    else this.remove(place);
  }

  private put(one: Typed): void {
    const at = this.all.findIndex(({ place }) => place === one.place);
    this.set(at < 0 ? [...this.all, one] : this.all.with(at, one));
  }
  private remove(place: string): void {
    if (this.at(place)) this.set(this.all.filter((one) => one.place !== place));
  }
  private set(all: readonly Typed[]): void {
    this.all = all;
    try {
      const words = all.filter((one) => one.words.trim() !== "");
      if (words.length === 0) this.store?.removeItem(this.key);
      else this.store?.setItem(this.key, JSON.stringify(words));
    } catch {
      // A full or forbidden store: they stay for as long as the page.
    }
    for (const listener of this.listeners) listener();
  }
}

function stored(key: string, store: Store): readonly Typed[] {
  try {
    const text = store?.getItem(key) ?? null;
    return text === null ? [] : (JSON.parse(text) as Typed[]); // written by TypedWords only, in this tab
  } catch {
    return [];
  }
}

/** The store of this tab; null where there is none or it is forbidden. */
export function tabStore(): Store {
  try {
    return globalThis.sessionStorage ?? null;
  } catch {
    return null;
  }
}

/** Words about items that are all gone from the plan: nowhere on the page is a field for them. */
export const withoutPlace = (typed: readonly Typed[], items: readonly { readonly id: string }[]): readonly Typed[] =>
  typed.filter(
    ({ words, items: about }) =>
      words.trim() !== "" && about.length > 0 && !about.some((id) => items.some((item) => item.id === id)),
  );
