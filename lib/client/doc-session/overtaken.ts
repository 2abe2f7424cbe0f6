/**
 * What a person set while the server could not hear it, and what became of it: where somebody else's value won when the
 * two came together, both are named, once. Nothing is told of values that stood.
 */
import type * as Y from "yjs";
import type { ValueAt, ValueWords } from "./description.ts";
import { placeKey, type Values } from "./values.ts";

/** A value of one's own that is another's now. */
export interface Overtaken {
  /** Names the value: one notice a value. */
  readonly place: string;
  /** "Jonas set Plank to 45 s; you had 55 s." */
  readonly sentence: string;
}

interface Own {
  readonly at: ValueAt;
  readonly words: ValueWords;
  /** What this page knew of every page when it set the value. */
  readonly since: ReadonlyMap<number, number>;
}

/** A value in words now; undefined for what is nothing to speak of. */
export type WordsOf = (at: ValueAt) => ValueWords | undefined;

export interface OvertakenOptions {
  readonly doc: Y.Doc;
  readonly values: Values;
  /** Whether the document has been read: what comes before is nobody's act. */
  isReady(): boolean;
  wordsOf: WordsOf;
  /** Whose page a client id was, as far as anybody knows. */
  nameOf(clientId: number): string | undefined;
}

export class OvertakenValues {
  /** Told, and not yet closed by the person. */
  list: readonly Overtaken[] = [];
  private readonly own = new Map<string, Own>();
  /** What this page sets the server may hear later than what others set. */
  private away = true;
  private readonly options: OvertakenOptions;

  constructor(options: OvertakenOptions) {
    this.options = options;
    options.doc.on("afterTransaction", this.note);
  }

  /** The server cannot be heard. */
  leave(): void {
    this.away = true;
  }

  /** The server can be heard again and everything was put together. Gives a sentence when something was overtaken. */
  comeBack(): string | undefined {
    if (!this.away) return undefined;
    this.away = false;
    const found = this.found();
    if (found.length === 0) return undefined;
    const again = new Set(found.map(({ place }) => place));
    this.list = [...this.list.filter(({ place }) => !again.has(place)), ...found];
    return overtakenSummary(found);
  }

  /** The server has all of one's own: what others set from now on comes after it. */
  forget(): void {
    this.own.clear();
  }

  close(): void {
    this.list = [];
  }

  end(): void {
    this.options.doc.off("afterTransaction", this.note);
  }

  private readonly note = (transaction: Y.Transaction): void => {
    if (!transaction.local || !this.options.isReady()) return;
    for (const at of this.options.values.touchedBy(transaction)) {
      const words = this.options.wordsOf(at);
      if (words) this.own.set(placeKey(at), { at, words, since: transaction.afterState });
    }
  };

  private found(): Overtaken[] {
    const { doc, values, wordsOf, nameOf } = this.options;
    return [...this.own].flatMap(([place, { at, words, since }]) => {
      const now = wordsOf(values.now(at));
      const writer = values.writerOf(at, since);
      if (!now || now.says === words.says || writer === doc.clientID) return [];
      const who = (writer === undefined ? undefined : nameOf(writer)) ?? "Somebody";
      return [{ place, sentence: overtakenWords(who, now, words) }];
    });
  }
}

export function overtakenWords(who: string, now: ValueWords, own: ValueWords): string {
  const did = now.did?.past ?? `set ${now.name} to ${now.says}`;
  return `${who} ${did}; you had ${own.did?.perfect ?? own.says}.`;
}

/** Several in one sentence; one is its own. */
export function overtakenSummary(all: readonly Overtaken[]): string {
  const [only] = all;
  if (all.length === 1 && only) return only.sentence;
  return `While you were offline others changed ${all.length} values that you had set too.`;
}
