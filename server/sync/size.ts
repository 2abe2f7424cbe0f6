/** Keeps a document within the bounds of its kind, decided from an update before it is applied. */
import * as Y from "yjs";
import { type Bounds, countLiving, countPieces } from "#lib/doc/bounds.ts";
import type { DecodedUpdate } from "#server/doc-log/updates.ts";
import { deletedStructs } from "./deleted-structs.ts";
import { StructView } from "./struct-view.ts";

/** Entries that an update brings, and which of them it takes out again: a page undid an addition that found no room. */
class NewEntries {
  private readonly ids = new Set<string>();
  private readonly takenOut = new Set<string>();

  made({ id }: Y.Item): void {
    this.ids.add(`${id.client} ${id.clock}`);
  }
  wrote({ parent, parentSub }: Y.Item): void {
    if (parentSub === "deleted" && parent instanceof Y.ID) this.takenOut.add(`${parent.client} ${parent.clock}`);
  }
  get all(): number {
    return this.ids.size;
  }
  get living(): number {
    return [...this.ids].filter((id) => !this.takenOut.has(id)).length;
  }
}

export class DocSize {
  private readonly doc: Y.Doc;
  private readonly bounds: Bounds;
  /** An upper bound: the last exact count plus everything since. Counted when it is first needed. */
  private characters: number | undefined;
  /** An upper bound. */
  private pieces: number;

  constructor(doc: Y.Doc, bounds: Bounds) {
    this.doc = doc;
    this.bounds = bounds;
    this.pieces = countPieces(doc);
  }

  /** True when an update would exceed a bound, or exceed it further. Shortening is always allowed. */
  overflows(update: DecodedUpdate): boolean {
    const view = new StructView(this.doc, update);
    let added = 0;
    const entries = new NewEntries();
    let pieces = 0;
    const roots = new Set<string>();
    for (const struct of view.brings()) {
      if (!(struct instanceof Y.Item)) continue;
      pieces++;
      const root = newRootOf(this.doc, struct);
      if (root !== undefined) roots.add(root);
      added += lengthOf(struct);
      if (isIn(struct, this.bounds.entries) && struct.parentSub !== null) entries.made(struct);
      else entries.wrote(struct);
    }
    if (added === 0) return false;
    if (roots.size > 0 && this.doc.share.size + roots.size > MOST_ROOTS) return true;
    return this.hasNoRoomFor(entries) || this.isTooFine(pieces) || this.isTooLong(added, update, view);
  }

  /** An update has been applied. */
  grew(update: DecodedUpdate): void {
    this.pieces += update.structs.length;
    if (this.characters === undefined) return;
    for (const struct of update.structs) if (struct instanceof Y.Item) this.characters += lengthOf(struct);
  }

  private hasNoRoomFor({ all, living }: NewEntries): boolean {
    if (all === 0) return false;
    const { most, mostEver } = this.bounds;
    if (this.doc.getMap(this.bounds.entries).size + all > mostEver) return true;
    return living > 0 && countLiving(this.doc, this.bounds) + living > most;
  }

  /** Small acts may go somewhat beyond the bound, since taking something out adds pieces too. */
  private isTooFine(added: number): boolean {
    const most = this.bounds.pieces * (added > ONE_ACT ? 1 : AFTER_ALL);
    if (this.pieces + added <= most) return false;
    this.pieces = countPieces(this.doc);
    return this.pieces + added > most;
  }

  private isTooLong(added: number, update: DecodedUpdate, view: StructView): boolean {
    const texts = Object.entries(this.bounds.texts).filter(
      ([root, most]) => this.doc.getText(root).length + added > most,
    );
    this.characters ??= countCharacters(this.doc);
    const mayBeFull = this.characters + added > this.bounds.characters;
    if (texts.length === 0 && !mayBeFull) return false;
    const removed = removedBy(this.doc, update);
    if (texts.some(([root, most]) => this.fills(root, most, removed, view))) return true;
    if (!mayBeFull || added <= total(removed)) return false;
    this.characters = countCharacters(this.doc);
    return this.characters + added - total(removed) > this.bounds.characters;
  }

  private fills(root: string, most: number, removed: readonly Y.Item[], view: StructView): boolean {
    const text = this.doc.getText(root);
    let added = 0;
    for (const struct of view.brings()) {
      if (!(struct instanceof Y.Item)) continue;
      const named = view.named(struct);
      if (named && (isIn(named, root) || named.parent === text)) added += lengthOf(struct);
    }
    const gone = total(removed.filter((item) => item.parent === text));
    return added > gone && text.length + added - gone > most;
  }
}

/**
 * Shared types at the root of a document; ours have about ten. yjs searches all of them for each item that it sends.
 */
const MOST_ROOTS = 100;

/** The name of the root that an item of an update would create. */
function newRootOf(doc: Y.Doc, item: Y.Item): string | undefined {
  const parent: unknown = item.parent;
  return typeof parent === "string" && !doc.share.has(parent) ? parent : undefined;
}

/** The most pieces that a single act adds, and by how much such acts may exceed the bound. */
const ONE_ACT = 50;
const AFTER_ALL = 1.2;

/** Whether an item of an update names this root as its parent; until it is applied, yjs keeps the name there. */
function isIn(item: Y.Item, root: string): boolean {
  const parent: unknown = item.parent;
  return parent === root;
}

/** Live items of the document that the deletions of an update remove; a part of one counts as all of it. */
const removedBy = (doc: Y.Doc, { ds }: DecodedUpdate): Y.Item[] =>
  [...deletedStructs(doc, ds)].filter((struct) => struct instanceof Y.Item);

const total = (items: readonly Y.Item[]): number => items.reduce((sum, item) => sum + lengthOf(item), 0);

function countCharacters(doc: Y.Doc): number {
  let sum = 0;
  for (const structs of doc.store.clients.values())
    for (const struct of structs) if (struct instanceof Y.Item && !struct.deleted) sum += lengthOf(struct);
  return sum;
}

/** The length of an item's content in characters; at least one, so that nothing is free. */
function lengthOf({ content }: Y.Item): number {
  if (content instanceof Y.ContentDeleted) return 0;
  if (content instanceof Y.ContentString) return content.str.length;
  if (content instanceof Y.ContentAny || content instanceof Y.ContentJSON) return JSON.stringify(content.arr).length;
  if (content instanceof Y.ContentEmbed) return JSON.stringify(content.embed).length;
  return content instanceof Y.ContentBinary ? content.content.byteLength : 1;
}
