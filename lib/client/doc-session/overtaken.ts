/**
 * What a person set, and what became of it: where somebody else's value won over it without having known it, or while the
 * server could not be heard, both are named, once. Nothing is told of values that stood, nor of texts two people write in
 * at once, which keep both one's words. What is not yet settled is kept with the device's copy for the page after this.
 */
import type * as Y from "yjs";
import type { Names } from "../names-seen.ts";
import type { ValueAt, ValueWords } from "./description.ts";
import { type KeepNote, namesNote, type OwnValue, ownNote, readNotes } from "./own-values.ts";
import { placeKey, type Values } from "./values.ts";

/** A value of one's own that is another's now. */
export interface Overtaken {
  /** Names the value: one notice a value. */
  readonly place: string;
  /** "Jonas set Plank to 45 s; you had 55 s." */
  readonly sentence: string;
}

/** A value in words now; undefined for what is nothing to speak of. */
export type WordsOf = (at: ValueAt) => ValueWords | undefined;

export interface OvertakenOptions {
  readonly doc: Y.Doc;
  readonly values: Values;
  /** Whether the document has been read: what comes before is nobody's act. */
  isReady(): boolean;
  wordsOf: WordsOf;
  /** Whose page a client id was, as far as anybody knows; `all` is what the next page is told of it. */
  readonly names: () => {
    nameOf(clientId: number): string | undefined;
    learn(names: Names): void;
    readonly all: Names;
  };
  keepNote: KeepNote;
}

export class OvertakenValues {
  /** Told, and not yet closed by the person. */
  list: readonly Overtaken[] = [];
  private readonly own = new Map<string, OwnValue>();
  /** Places of `own` that the server has: only who did not know them can overtake them. */
  private readonly heard = new Set<string>();
  /** Names of the notes on the device, with the place each is of; null for one that only goes along with others. */
  private readonly kept = new Map<string, string | null>();
  /** Items that others changed since it was looked last. */
  private readonly changed = new Set<string>();
  /** What this page sets the server may hear later than what others set. */
  private away = true;
  private remembered = false;
  private readonly options: OvertakenOptions;

  constructor(options: OvertakenOptions) {
    this.options = options;
    options.doc.on("afterTransaction", this.note);
  }

  /** Takes over what earlier pages left on this device; asked again it does nothing. */
  remember(notes: ReadonlyMap<string, unknown>): void {
    if (this.remembered) return;
    this.remembered = true;
    const { own, names, notes: all } = readNotes(notes);
    this.options.names().learn(names);
    for (const name of all) if (!this.kept.has(name)) this.kept.set(name, null);
    for (const one of own) {
      const place = placeKey(one.at);
      this.kept.set(ownNote(one), place);
      if (!this.own.has(place)) this.own.set(place, one);
    }
  }

  /** The server cannot be heard. */
  leave(): void {
    this.away = true;
  }

  /** The server can be heard and all it had was put together. Gives a sentence when something was overtaken. */
  look(): string | undefined {
    const found = this.found();
    this.away = false;
    this.changed.clear();
    if (found.length === 0) return undefined;
    const again = new Set(found.map(({ place }) => place));
    for (const place of again) this.drop(place);
    this.list = [...this.list.filter(({ place }) => !again.has(place)), ...found];
    return overtakenSummary(found);
  }

  /** The server has all of one's own. What was told stays noted until the person has closed it. */
  settle(): void {
    for (const [place, { at }] of this.own) {
      if (this.options.values.isText(at)) this.drop(place);
      else this.heard.add(place);
    }
    this.tidy();
  }

  close(): void {
    this.list = [];
    this.tidy();
  }

  end(): void {
    this.options.doc.off("afterTransaction", this.note);
  }

  private readonly note = (transaction: Y.Transaction): void => {
    if (!this.options.isReady()) return;
    if (transaction.local) this.noteOwn(transaction);
    else if (this.own.size > 0) for (const { id } of this.options.values.touchedBy(transaction)) this.changed.add(id);
  };

  private noteOwn(transaction: Y.Transaction): void {
    const { doc, values, wordsOf } = this.options;
    const by = doc.clientID;
    for (const at of values.touchedBy(transaction)) {
      const words = wordsOf(at);
      if (!words) continue;
      const place = placeKey(at);
      const since = values.isText(at) ? transaction.afterState : new Map<number, number>();
      const own = { at: { id: at.id, key: at.key }, words, by, since, struct: values.structOf(at) };
      this.heard.delete(place);
      this.own.set(place, own);
      this.keep(place, own);
    }
  }

  private keep(place: string, own: OwnValue): void {
    const { keepNote, names } = this.options;
    const [name, along] = [ownNote(own), namesNote(own.by)];
    for (const [other, of] of this.kept) if (of === place && other !== name) this.letGo(other);
    if (!this.kept.has(along)) keepNote(along, names().all);
    this.kept.set(along, null);
    this.kept.set(name, place);
    keepNote(name, own);
  }

  /** Lets go of the notes of what the server has and nobody has to read any more. */
  private tidy(): void {
    const open = new Set([...this.own.keys()].filter((place) => !this.heard.has(place)));
    for (const { place } of this.list) open.add(place);
    for (const [name, place] of this.kept) if (place === null ? open.size === 0 : !open.has(place)) this.letGo(name);
  }

  private letGo(name: string): void {
    this.kept.delete(name);
    this.options.keepNote(name, undefined);
  }

  private found(): Overtaken[] {
    return [...this.own].flatMap(([place, own]) => {
      if (!this.away && !this.changed.has(own.at.id)) return [];
      const sentence = this.sentenceOf(place, own);
      return sentence === undefined ? [] : [{ place, sentence }];
    });
  }

  private sentenceOf(place: string, { at, words, by, since, struct }: OwnValue): string | undefined {
    const { doc, values, wordsOf, names } = this.options;
    const now = wordsOf(values.now(at));
    const own = [by, doc.clientID];
    const writer = values.writerOf(at, { since, own });
    if (!now || now.says === words.says || (writer !== undefined && own.includes(writer))) return undefined;
    if (!this.away && values.isText(at)) return undefined;
    if ((!this.away || this.heard.has(place)) && values.followed(at, struct)) {
      this.drop(place);
      return undefined;
    }
    const who = (writer === undefined ? undefined : names().nameOf(writer)) ?? "Somebody";
    return overtakenWords(who, now, words);
  }

  private drop(place: string): void {
    this.own.delete(place);
    this.heard.delete(place);
  }
}

function overtakenWords(who: string, now: ValueWords, own: ValueWords): string {
  const did = now.did?.past ?? `set ${now.name} to ${now.says}`;
  return `${who} ${did}; you had ${own.did?.perfect ?? own.says}.`;
}

/** Several in one sentence; one is its own. */
export function overtakenSummary(all: readonly Overtaken[]): string {
  const [only] = all;
  if (all.length === 1 && only) return only.sentence;
  return `Others changed ${all.length} values that you had set too.`;
}
