/**
 * Undo for a whole page over one shared document: one's own acts only, the newest first, one act a step.
 *
 * Texts and scripts keep yjs's own undo. For plain keys it is not enough: where two people set one key at once it takes
 * the key away as both undo, and readers fall back to a default that nobody set. The law here, for undo and redo alike:
 *
 * - A key shows again what it showed when this page set it. That was set by somebody, or was there from the start, or was
 *   nothing; a key that was there stays there.
 * - Only while it still shows this page's own value, or one that somebody's undo brought back to it. What another person
 *   has set since, or set at the same moment and won with, stays; the outcome says whose it is. Such a step is used up: it
 *   counts as done, and was written over.
 * - Of a step with several values those that can be undone are.
 * - Of two values set at once, undo of the one that won brings back what stood before both, not the one that lost: its page
 *   may be taking it back at this very moment, unheard, and two people who both undo must be where they were.
 * - The making of an entry is undone by a mark, whoever has written in it since: nothing of theirs is lost, it is listed and
 *   can be put back. An entry that somebody took out, or put back, since then is left as they have it.
 * - In an entry that is taken out nothing is undone: nobody would see it.
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

/** One value that was left as it is. */
export interface BlockedValue {
  /** The item or slot; null for a value of the document as a whole. */
  readonly entry: string | null;
  /** Its key; null for words in it. */
  readonly key: string | null;
  /** `changed` by another since; `gone`: its entry is taken out; `already` as undo would have it. */
  readonly why: "changed" | "gone" | "already";
  /** Client id of the page that stood in the way; undefined where nobody can tell. */
  readonly by: number | undefined;
  /** What is there; undefined: nothing. */
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
  /** Maps of values, maps of entries, texts: everything that undo reaches. */
  readonly scopes: readonly AnySharedType[];
  readonly takenOut: TakenOutMark;
  readonly onChange?: () => void;
}

const NOTHING: UndoOutcome = { done: false, stood: [] };
const KEYS = Symbol("changes of keys");
const WRITTEN = Symbol("entries written in");

export class ActUndo {
  /** Steps, and the texts in them. Its `undo` and `redo` are not to be called: keys would be left out. */
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
    // After the manager's own handler, and before yjs lets go of what the transaction took away.
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

  /** A step that has nothing left to take back and nothing to say, such as letters that others have erased, is passed over. */
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

  /** The marks first: what the same step puts back is there again for its other values. */
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

  /** What keeps a change from being taken back. */
  private inTheWay(change: KeyChange, back: ReadonlySet<AnyMap>): BlockedValue | undefined {
    const { map, key, entry, before, after } = change;
    const hidden = entry !== null && !this.isMark(change) && this.isOut(map) && !back.has(map);
    if (map._item?.deleted || hidden)
      return { entry, key, why: "gone", by: this.by(map, this.options.takenOut.key), value: undefined };
    const now = keyStateNow(map, key);
    const { clientID } = this.options.doc;
    if (now.of === after.of || actorOf(now) === clientID) return undefined;
    // Nothing is there, as it was: undoing a making and bringing it back leaves an absence of another name.
    if (after.value === undefined && erasedBy(now) === clientID) return undefined;
    const why = sameData(now.value, before.value) ? "already" : "changed";
    return { entry, key, why, by: this.by(map, key), value: now.value };
  }

  /** One transaction that the manager takes for its own undoing, so that the way back is kept beside it. */
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

  /** Whose word a key shows: where this page's own undo brought another's value back, that other's. */
  private by(map: AnyMap, key: string): number | undefined {
    const writer = writerOf(map, key);
    return writer === this.options.doc.clientID ? actorOf(keyStateNow(map, key)) : writer;
  }
}

const changesOf = (step: UndoStep): readonly KeyChange[] => (step.meta.get(KEYS) as KeyChange[] | undefined) ?? [];
const writtenIn = (step: UndoStep): ReadonlySet<AnyMap> =>
  (step.meta.get(WRITTEN) as Set<AnyMap> | undefined) ?? new Set();

/** Keys and texts of one step are undone in two transactions: their ways back are one step again. */
function asOneStep(stack: UndoStep[], height: number): void {
  const [keys, texts] = stack.slice(height);
  if (!keys || !texts) return;
  stack.splice(height + 1);
  keys.insertions = texts.insertions;
  keys.deletions = texts.deletions;
  for (const [name, value] of texts.meta) keys.meta.set(name, value);
}
