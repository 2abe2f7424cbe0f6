/**
 * Undo for a whole page over one shared document: one's own acts only, newest first, one act a step.
 *
 * Texts and scripts keep yjs's own undo. That is not enough for plain keys: where two people set one key at once and
 * both undo, yjs removes the key, and readers fall back to a default that nobody set. The rules here, for undo and redo
 * alike:
 *
 * - A key shows again what it showed before this page set it: somebody's value, the value it had from the start, or
 *   nothing.
 * - This happens only while it still shows this page's own value, or one that somebody's undo brought back. What
 *   another person has set since, or set at the same moment and won with, stays, and the outcome says whose it is. Such
 *   a step is used up.
 * - Of a step with several values, those that can be undone are.
 * - Of two values set at once, undoing the one that won brings back what was there before both, not the one that lost.
 *   Its page may be undoing it at the same moment, and two people who both undo must end up where they started.
 * - Making an entry is undone by a mark, even if others have written in it since: nothing of theirs is lost, it is
 *   listed as taken out and can be put back. An entry that somebody has since taken out or put back is left as it is.
 * - Nothing is undone in an entry that is taken out, since nobody would see it.
 */
import * as Y from "yjs";
import { sameData } from "#lib/plan/same-data.ts";
import {
  type AnySharedType,
  changesIn,
  entriesWritten,
  joinedChanges,
  type KeyChange,
  type TakenOutMark,
} from "./undo/changes.ts";
import { type AnyMap, actorOf, erasedBy, keyStateNow, restoreKeyState, writerOf } from "./undo/key-state.ts";
import { RestoredTwice } from "./undo/restored-twice.ts";
import { hasTexts, keepTexts, popTexts } from "./undo/texts.ts";
import type { UndoDirection, UndoStep } from "./undo/undo-step.ts";

/** Typing within this many milliseconds is one step. */
const CAPTURE_MS = 500;

/** A value that undo left as it is. */
export interface BlockedValue {
  /** The item or slot; null for a value of the document as a whole. */
  readonly entry: string | null;
  /** Its key; null for its texts. */
  readonly key: string | null;
  /**
   * `changed`: somebody else has set it since. `gone`: its entry is taken out. `already`: it already shows what undo
   * would restore.
   */
  readonly why: "changed" | "gone" | "already";
  /** Client id of the page whose act is in the way; undefined where nobody can tell. */
  readonly by: number | undefined;
  /** The value there now; undefined where the key is absent. */
  readonly value: unknown;
}

export interface UndoOutcome {
  /** Whether anything was changed. */
  readonly done: boolean;
  readonly stood: readonly BlockedValue[];
}

export interface ActUndoOptions {
  readonly doc: Y.Doc;
  /** The origin of this page's acts. */
  readonly origin: unknown;
  /** Everything that undo reaches: maps of values, maps of entries, texts. */
  readonly scopes: readonly AnySharedType[];
  readonly takenOut: TakenOutMark;
  readonly onChange?: () => void;
}

const NOTHING: UndoOutcome = { done: false, stood: [] };
const KEYS = Symbol("changes of keys");
const WRITTEN = Symbol("entries written in");

export class ActUndo {
  /** Holds the steps and undoes their texts. Do not call its own `undo` and `redo`: they would skip keys. */
  readonly manager: Y.UndoManager;
  private readonly broughtBack: RestoredTwice;
  private captured: UndoStep | null = null;

  constructor(private readonly options: ActUndoOptions) {
    const { doc, origin, scopes } = options;
    this.manager = new Y.UndoManager([...scopes], {
      doc,
      trackedOrigins: new Set([origin]),
      captureTimeout: CAPTURE_MS,
    });
    this.broughtBack = new RestoredTwice(doc);
    const capture = ({ stackItem }: { stackItem: UndoStep }) => {
      this.captured = stackItem;
    };
    this.manager.on("stack-item-added", capture);
    this.manager.on("stack-item-updated", capture);
    this.manager.on("stack-cleared", this.changed);
    // Runs after the manager's own handler, and before yjs frees what the transaction deleted.
    doc.on("afterTransaction", this.note);
  }

  /** Runs `change` as a step of its own, never joined to the typing before or after it. */
  step(change: () => void): void {
    this.manager.stopCapturing();
    change();
    this.manager.stopCapturing();
  }

  get canUndo(): boolean {
    return this.manager.undoStack.length > 0;
  }
  get canRedo(): boolean {
    return this.manager.redoStack.length > 0;
  }

  undo(): UndoOutcome {
    return this.take("undo");
  }
  redo(): UndoOutcome {
    return this.take("redo");
  }

  destroy(): void {
    this.options.doc.off("afterTransaction", this.note);
    this.broughtBack.end();
    this.manager.destroy();
  }

  private readonly changed = (): void => this.options.onChange?.();

  private readonly note = (transaction: Y.Transaction): void => {
    const step = this.captured;
    this.captured = null;
    if (step === null) return;
    const { scopes, takenOut } = this.options;
    const changes = changesIn(transaction, scopes, takenOut);
    if (changes.length > 0) step.meta.set(KEYS, joinedChanges(changesOf(step), changes));
    if ([...transaction.changed.keys()].some((type) => type instanceof Y.Map)) keepTexts(step, transaction);
    const written = entriesWritten(transaction, scopes);
    if (written.length > 0) step.meta.set(WRITTEN, new Set([...writtenIn(step), ...written]));
    this.changed();
  };

  /** Skips steps that have nothing left to undo and nothing to report, such as letters that others have erased. */
  private take(way: UndoDirection): UndoOutcome {
    for (;;) {
      const step = (way === "undo" ? this.manager.undoStack : this.manager.redoStack).pop();
      const outcome = step ? this.takeStep(way, step) : NOTHING;
      if (step && !outcome.done && outcome.stood.length === 0) continue;
      this.manager.stopCapturing();
      this.changed();
      return outcome;
    }
  }

  private takeStep(way: UndoDirection, step: UndoStep): UndoOutcome {
    const { manager } = this;
    const onto = () => (way === "undo" ? manager.redoStack : manager.undoStack);
    const height = onto().length;
    const judged = this.judge(changesOf(step));
    const free = judged.flatMap(({ change, stood }) => (stood ? [] : [change]));
    this.putBack(way, free);
    const gone = [...writtenIn(step)].filter((map) => this.isOut(map));
    const typed = gone.length === 0 && hasTexts(step) && popTexts(manager, way, step);
    if (typed) this.broughtBack.watch(step);
    asOneStep(onto(), height);
    return {
      done: free.length > 0 || typed,
      stood: [...judged.flatMap(({ stood }) => stood ?? []), ...gone.map((map) => this.goneWords(map))],
    };
  }

  /** Marks come first: an entry that this step puts back is there again for its other values. */
  private judge(changes: readonly KeyChange[]): { change: KeyChange; stood: BlockedValue | undefined }[] {
    const back = new Set<AnyMap>();
    return [...changes]
      .sort((a, b) => Number(this.isMark(b)) - Number(this.isMark(a)))
      .map((change) => {
        const stood = this.inTheWay(change, back);
        if (!stood && this.isMark(change) && change.before.value === undefined) back.add(change.map);
        return { change, stood };
      });
  }

  private isMark({ entry, key }: KeyChange): boolean {
    return entry !== null && key === this.options.takenOut.key;
  }

  /** What keeps a change from being undone; undefined where nothing does. */
  private inTheWay(change: KeyChange, back: ReadonlySet<AnyMap>): BlockedValue | undefined {
    const { map, key, entry, before, after } = change;
    const hidden = entry !== null && !this.isMark(change) && this.isOut(map) && !back.has(map);
    if (map._item?.deleted || hidden)
      return { entry, key, why: "gone", by: this.by(map, this.options.takenOut.key), value: undefined };
    const now = keyStateNow(map, key);
    const { clientID } = this.options.doc;
    if (now.of === after.of || actorOf(now) === clientID) return undefined;
    // Still absent, as this page left it: undoing and redoing a making leaves an absence with another name.
    if (after.value === undefined && erasedBy(now) === clientID) return undefined;
    const why = sameData(now.value, before.value) ? "already" : "changed";
    return { entry, key, why, by: this.by(map, key), value: now.value };
  }

  /** One transaction that the manager takes for its own undo, so that it keeps the way back too. */
  private putBack(way: UndoDirection, changes: readonly KeyChange[]): void {
    if (changes.length === 0) return;
    const { manager, options } = this;
    const doing = way === "undo" ? "undoing" : "redoing";
    manager[doing] = true;
    try {
      options.doc.transact((transaction) => {
        for (const { map, key, before } of changes) restoreKeyState(transaction, map, key, before);
      }, manager);
    } finally {
      manager[doing] = false;
    }
  }

  private isOut(map: AnyMap): boolean {
    return map._item?.deleted === true || map.get(this.options.takenOut.key) !== undefined;
  }

  private goneWords(map: AnyMap): BlockedValue {
    const by = this.by(map, this.options.takenOut.key);
    return { entry: map._item?.parentSub ?? null, key: null, why: "gone", by, value: undefined };
  }

  /**
   * The page whose value a key shows; where this page's undo brought back somebody else's value, that person's page.
   */
  private by(map: AnyMap, key: string): number | undefined {
    const writer = writerOf(map, key);
    return writer === this.options.doc.clientID ? actorOf(keyStateNow(map, key)) : writer;
  }
}

const changesOf = (step: UndoStep): readonly KeyChange[] => (step.meta.get(KEYS) as KeyChange[] | undefined) ?? [];
const writtenIn = (step: UndoStep): ReadonlySet<AnyMap> =>
  (step.meta.get(WRITTEN) as Set<AnyMap> | undefined) ?? new Set();

/** Keys and texts of one step are undone in two transactions; joins their ways back into one step again. */
function asOneStep(stack: UndoStep[], height: number): void {
  const [keys, texts] = stack.slice(height);
  if (!keys || !texts) return;
  stack.splice(height + 1);
  keys.insertions = texts.insertions;
  keys.deletions = texts.deletions;
  for (const [name, value] of texts.meta) keys.meta.set(name, value);
}
