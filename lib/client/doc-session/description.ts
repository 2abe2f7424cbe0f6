/** What a kind of document says of itself. The rest of a session is the same for all of them. */
import type * as Y from "yjs";
import type { Writer } from "#lib/doc/write.ts";
import type { DocKind, News, Present } from "#lib/protocol/messages.ts";
import type { UndoOutcome } from "../act-undo.ts";
import type { PagePerson } from "./places.ts";

/** What the server says beside the document, whatever the kind. */
export interface ServerFacts {
  readonly rights: { readonly writes: boolean; readonly comments: boolean };
  readonly present: readonly Present[];
}

/** Undo of one's own acts. `undo` and `redo` answer what they did, and what stood in the way. */
export interface SessionUndo {
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  step(change: () => void): void;
  undo(): UndoOutcome;
  redo(): UndoOutcome;
  /** For an editor's own history plugin; forgets all steps when the document has been read. */
  readonly manager: { clear(): void };
  destroy(): void;
}

/** One plain value that a person can set: a key of a shared map, or a shared text as a whole. */
export interface ValueAt {
  /** Of the item or slot it belongs to; empty for the document's own. */
  readonly id: string;
  /** Key in that map; the name of the text. */
  readonly key: string;
  /** Undefined: the key is not there. Of a text: its words. */
  readonly value: unknown;
}

/** A value in words. */
export interface ValueWords {
  /** What was set: "Plank", "the side of Plank". Read in "set NAME to SAYS" and in "NAME is SAYS". */
  readonly name: string;
  /** What it was set to: "45 s". Two values that are worded alike count as the same. */
  readonly says: string;
  /** Where "set NAME to SAYS" is no English: "took Plank out", and after "you had": "taken it out". */
  readonly did?: { readonly past: string; readonly perfect: string };
}

/** Where a document keeps plain values. */
export interface ValuePlaces {
  /** The document's own values, and its texts by name. */
  readonly root: Y.Map<unknown> | null;
  readonly texts: Readonly<Record<string, Y.Text>>;
  /** Items or slots by id, each a map of values and texts. */
  readonly entries: Y.Map<Y.Map<unknown>>;
  /** The key whose value counts in place of this one's, where another does: it says who set what is read. */
  countsAt?(at: Pick<ValueAt, "id" | "key">): string;
}

export interface DocDescription<Derived extends object, Heard extends ServerFacts, Undo extends SessionUndo> {
  readonly kind: DocKind;
  readonly key: string;
  readonly generation: string;
  readonly me: PagePerson;
  /** What the server said with the page. */
  readonly heard: Heard;
  /** What one more news makes of that; the same object when it changes nothing here. Rights and people are not asked. */
  hear(heard: Heard, news: News): Heard;
  /** What is worked out from the document. Must not write. */
  derive(doc: Y.Doc, heard: Heard, before: Derived | null): Derived;
  /** What else `derive` looks at: worked out anew when one of these is not the same as before. */
  derivesFrom?(heard: Heard): readonly unknown[];
  /** Whether an item is still there to be selected. */
  has(derived: Derived, id: string): boolean;
  makeUndo(writer: Writer, onChange: () => void): Undo;
  values(doc: Y.Doc): ValuePlaces;
  /** Undefined for what is nothing to speak of: a mark beside another value, an item that is not there. */
  words(at: ValueAt, doc: Y.Doc, derived: Derived): ValueWords | undefined;
}

/** The same object when the news says nothing that every kind of document hears. */
export function withNews<Heard extends ServerFacts>(now: Heard, news: News): Heard {
  if (news.t === "rights") return { ...now, rights: { writes: news.writes, comments: news.comments } };
  return news.t === "present" ? { ...now, present: news.people } : now;
}
