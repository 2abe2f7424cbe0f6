/**
 * Tells a person once when somebody else's value replaced theirs unseen: set while the server could not be reached, or
 * by somebody who had not read theirs, or hardly can have. A notice goes once it is not so any more. Values that stood are not mentioned, nor are texts that two people write in at
 * once, since those keep both people's words. What is not yet settled is kept with the device's copy for the next page.
 */
import type * as Y from "yjs";
import { keepSame } from "#lib/memo/keep-same.ts";
import type { Names } from "../names-seen.ts";
import type { ValueAt, ValueWords } from "./description.ts";
import { type KeepNote, namesNote, type OwnValue, ownNote, readNotes } from "./own-values.ts";
import { placeKey, type Values } from "./values.ts";

/** A value this person set that somebody else's has replaced. */
export interface Overtaken {
  /** Identifies the value: there is one notice for each. */
  readonly place: string;
  /** "Jonas set Plank to 45 s; you had 55 s." */
  readonly sentence: string;
}

/** A value as it is now, in words; undefined where it is not worth mentioning. */
export type WordsOf = (at: ValueAt) => ValueWords | undefined;

export interface OvertakenOptions {
  readonly doc: Y.Doc;
  readonly values: Values;
  /** Whether the document has been read: what arrives before that is nobody's act. */
  isReady(): boolean;
  wordsOf: WordsOf;
  /** Whose page a client id belongs to, as far as is known; `all` is handed on to the next page. */
  readonly names: () => {
    nameOf(clientId: number): string | undefined;
    learn(names: Names): void;
    readonly all: Names;
  };
  keepNote: KeepNote;
  /** ms; only differences count. */
  now(): number;
}

/**
 * Whoever replaces a value so soon after it was set can hardly have read it, even where their page had it. Our own choice: typing a time
 * or choosing from a list takes about as long.
 */
const JUST_SET_MS = 3_000;

export class OvertakenValues {
  /** Shown, and not yet closed by the person. */
  list: readonly Overtaken[] = [];
  /** What this person had, of each in `list`. */
  private readonly lost = new Map<string, OwnValue>();
  private readonly own = new Map<string, OwnValue>();
  /** When each of `own` was set on this page. */
  private readonly setAt = new Map<string, number>();
  /** Places of `own` that have reached the server: only somebody who had not read them can replace them unseen. */
  private readonly heard = new Set<string>();
  /** Names of the notes on the device, each with its place; null for one that only accompanies others. */
  private readonly kept = new Map<string, string | null>();
  /** Items that others have changed since the last look. */
  private readonly changed = new Set<string>();
  /** The server may hear of this page's changes later than of other people's. */
  private away = true;
  private remembered = false;
  private readonly options: OvertakenOptions;

  constructor(options: OvertakenOptions) {
    this.options = options;
    options.doc.on("afterTransaction", this.note);
  }

  /** Takes over what earlier pages left on this device. Calling it again does nothing. */
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

  /** The server cannot be reached. */
  leave(): void {
    this.away = true;
  }

  /** The server is reached and everything it had is merged. Returns a sentence when a value was replaced. */
  look(): string | undefined {
    const found = this.found();
    this.away = false;
    this.changed.clear();
    const again = new Set(found.map(({ place }) => place));
    const before = this.list.filter(({ place }) => !again.has(place));
    this.list = keepSame(this.list, [...before.flatMap(({ place }) => this.stillTrue(place)), ...found]);
    return found.length === 0 ? undefined : overtakenSummary(found);
  }

  /** The server has all of this page's changes. Notices that were shown stay noted until the person has closed them. */
  settle(): void {
    for (const [place, { at }] of this.own) {
      if (this.options.values.isText(at)) this.drop(place);
      else this.heard.add(place);
    }
    this.tidy();
  }

  close(): void {
    this.list = [];
    this.lost.clear();
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
      this.setAt.set(place, this.options.now());
      this.keep(place, own);
      this.takeBack(place);
    }
  }

  /** What was told of a place is not so any more. */
  private takeBack(place: string): void {
    this.lost.delete(place);
    if (this.list.some((one) => one.place === place)) this.list = this.list.filter((one) => one.place !== place);
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

  /** Drops the notes of values that are saved and that nobody still has to read about. */
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
      if (sentence === undefined) return [];
      this.drop(place);
      this.lost.set(place, own);
      return [{ place, sentence }];
    });
  }

  /** A notice as it is now: others may have set the value further, or back to what this person had. */
  private stillTrue(place: string): Overtaken[] {
    const own = this.lost.get(place);
    const words = own && this.replacedWords(own);
    if (words !== undefined) return [{ place, sentence: words }];
    this.lost.delete(place);
    return [];
  }

  private sentenceOf(place: string, own: OwnValue): string | undefined {
    const { values } = this.options;
    const words = this.replacedWords(own);
    if (words === undefined || (!this.away && values.isText(own.at))) return undefined;
    if ((!this.away || this.heard.has(place)) && values.followed(own.at, own.struct) && !this.isJustSet(place)) {
      this.drop(place);
      return undefined;
    }
    return words;
  }

  /** Undefined while the value is this person's own. */
  private replacedWords({ at, words, by, since }: OwnValue): string | undefined {
    const { doc, values, wordsOf, names } = this.options;
    const now = wordsOf(values.now(at));
    const own = [by, doc.clientID];
    const writer = values.writerOf(at, { since, own });
    if (!now || now.says === words.says || (writer !== undefined && own.includes(writer))) return undefined;
    const who = (writer === undefined ? undefined : names().nameOf(writer)) ?? "Somebody";
    return overtakenWords(who, now, words);
  }

  private isJustSet(place: string): boolean {
    const at = this.setAt.get(place);
    return at !== undefined && this.options.now() - at < JUST_SET_MS;
  }

  private drop(place: string): void {
    this.own.delete(place);
    this.setAt.delete(place);
    this.heard.delete(place);
  }
}

function overtakenWords(who: string, now: ValueWords, own: ValueWords): string {
  const did = now.did?.past ?? `set ${now.name} to ${now.says}`;
  return `${who} ${did}; you had ${own.did?.perfect ?? own.says}.`;
}

/** Several in one sentence; a single one is shown as it is. */
export function overtakenSummary(all: readonly Overtaken[]): string {
  const [only] = all;
  if (all.length === 1 && only) return only.sentence;
  return `Others have changed ${all.length} values that you set.`;
}
