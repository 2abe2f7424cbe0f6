/** What each kind of document defines for itself. The rest of a session is the same for all kinds. */
import type * as Y from "yjs";
import type { Writer } from "#lib/doc/write.ts";
import type { DocKind, News, Present } from "#lib/protocol/messages.ts";
import type { UndoOutcome } from "../act-undo.ts";
import type { DocAtStart } from "./begins-with.ts";
import type { PagePerson } from "./places.ts";

/** What the server says about any document, besides its content. */
export interface ServerFacts {
  readonly rights: { readonly writes: boolean; readonly comments: boolean };
  readonly present: readonly Present[];
}

/** Undo of one's own acts. `undo` and `redo` return what they did and what they could not change. */
export interface SessionUndo {
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  step(change: () => void): void;
  undo(): UndoOutcome;
  redo(): UndoOutcome;
  /** For an editor's history plugin; cleared once the document has been read. */
  readonly manager: { clear(): void };
  destroy(): void;
}

/** One plain value that a person can set: a key of a shared map, or a shared text as a whole. */
export interface ValueAt {
  /** Id of the item or slot it belongs to; empty for the document's own values. */
  readonly id: string;
  /** Key in that map, or the name of the text. */
  readonly key: string;
  /** Undefined where the key is absent. For a text: its words. */
  readonly value: unknown;
}

/** A value in words. */
export interface ValueWords {
  /** What was set: "Plank", "the side of Plank". Read in "set NAME to SAYS" and in "NAME is SAYS". */
  readonly name: string;
  /** What it was set to: "45 s". Two values with the same words count as the same. */
  readonly says: string;
  /**
   * For acts that "set NAME to SAYS" does not fit: `past` is "took Plank out"; `perfect`, after "you had", is "taken it
   * out".
   */
  readonly did?: { readonly past: string; readonly perfect: string };
}

/** Where a document keeps plain values. */
export interface ValuePlaces {
  /** The document's own values, and its texts by name. */
  readonly root: Y.Map<unknown> | null;
  readonly texts: Readonly<Record<string, Y.Text>>;
  /** Items or slots by id, each a map of values and texts. */
  readonly entries: Y.Map<Y.Map<unknown>>;
  /** Where another key's value counts in place of this one's: that key, so that its writer is named. */
  countsAt?(at: Pick<ValueAt, "id" | "key">): string;
}

export interface DocDescription<Derived extends object, Heard extends ServerFacts, Undo extends SessionUndo> {
  readonly kind: DocKind;
  readonly key: string;
  readonly generation: string;
  readonly me: PagePerson;
  /** The document as it came with the page, and its version; undefined where it comes over the socket. */
  readonly start?: DocAtStart | undefined;
  /** What else the server sent with the page. */
  readonly heard: Heard;
  /**
   * `heard` after one more piece of news; the same object when that changes nothing. Rights and presence are handled
   * elsewhere.
   */
  hear(heard: Heard, news: News): Heard;
  /** Works out what pages show from the document. Must not write. */
  derive(doc: Y.Doc, heard: Heard, before: Derived | null): Derived;
  /** What else `derive` reads: it runs again when one of these is no longer the same object. */
  derivesFrom?(heard: Heard): readonly unknown[];
  /** Whether an item is still there to be selected. */
  has(derived: Derived, id: string): boolean;
  makeUndo(writer: Writer, onChange: () => void): Undo;
  values(doc: Y.Doc): ValuePlaces;
  /** Undefined where a value is not worth mentioning: a mark beside another value, or an item that is not there. */
  words(at: ValueAt, doc: Y.Doc, derived: Derived): ValueWords | undefined;
}

/** Applies the news that every kind of document handles; the same object when there is none. */
export function withNews<Heard extends ServerFacts>(now: Heard, news: News): Heard {
  if (news.t === "rights") return { ...now, rights: { writes: news.writes, comments: news.comments } };
  return news.t === "present" ? { ...now, present: news.people } : now;
}
