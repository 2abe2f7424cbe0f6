/**
 * One open document of any kind, outside React: the document, its socket, its copy on this device, its undo, presence, news.
 * Components read frozen snapshots and act through `act`. What differs by kind is in its description; `edge.ts` is its machine.
 */
import type { Awareness } from "y-protocols/awareness";
import * as Y from "yjs";
import { docVersion } from "#lib/doc/layout.ts";
import { act, type Writer } from "#lib/doc/write.ts";
import { closeText } from "#lib/protocol/close.ts";
import type { News } from "#lib/protocol/messages.ts";
import type { UndoOutcome } from "../act-undo.ts";
import { LiveCheck } from "../live-check.ts";
import { NamesSeen } from "../names-seen.ts";
import { connectDoc, type DocConnection } from "../provider.ts";
import { beginsWith } from "./begins-with.ts";
import { copyName } from "./copy-name.ts";
import { type DocDescription, type ServerFacts, type SessionUndo, type ValueAt, withNews } from "./description.ts";
import type { Edge, KeptCopy, Unsubscribe } from "./edge.ts";
import type { Snapshot } from "./facts.ts";
import { VERSIONS } from "./kinds.ts";
import { blockedValueWords, NotUndone } from "./not-undone.ts";
import { OvertakenValues } from "./overtaken.ts";
import { type PagePerson, placesOf } from "./places.ts";
import { type SaveState, saveStateOf } from "./save-state.ts";
import { notUndoneWords, type UndoVerb, undoWords } from "./undo-words.ts";
import { Values } from "./values.ts";

export class DocSession<
  Derived extends object,
  Heard extends ServerFacts = ServerFacts,
  Undo extends SessionUndo = SessionUndo,
> {
  readonly doc = new Y.Doc();
  readonly writer: Writer = { doc: this.doc, origin: { of: "this page" } };
  readonly awareness: Awareness;
  readonly history: Undo;
  readonly me: PagePerson;
  /** Whose page each client id belongs to. */
  readonly names: NamesSeen;

  private readonly of: DocDescription<Derived, Heard, Undo>;
  private readonly edge: Edge;
  private readonly link: DocConnection;
  private readonly copy: KeptCopy;
  private readonly values: Values;
  private readonly overtaken: OvertakenValues;
  private readonly live = new LiveCheck({ ask: () => this.edge.askAddress(), onChange: () => this.touch() });
  private readonly notUndone: NotUndone;
  private readonly listeners = new Set<() => void>();
  private readonly offs: Unsubscribe[];
  private heard: Heard;
  private derived: Derived;
  private derivedFrom: readonly unknown[];
  private snapshot: Snapshot<Derived, Heard>;
  private ready = false;
  private selectedId: string | null = null;
  private said = "";
  private docChanged = false;
  private cancelFrame: Unsubscribe | null = null;
  private ended = false;

  constructor(description: DocDescription<Derived, Heard, Undo>, edge: Edge) {
    this.of = description;
    this.edge = edge;
    this.me = description.me;
    this.ready = beginsWith(this.doc, description.start, VERSIONS[description.kind]);
    this.heard = description.heard;
    this.values = new Values(description.values(this.doc));
    this.overtaken = new OvertakenValues({
      ...{ doc: this.doc, values: this.values, wordsOf: this.wordsOf },
      isReady: () => this.ready,
      names: () => this.names,
      keepNote: (name, value) => this.copy.keepNote(name, value),
      now: () => edge.now(),
    });
    this.notUndone = new NotUndone(edge.later, () => this.touch());
    this.history = description.makeUndo(this.writer, () => this.touch());
    this.derivedFrom = this.readsNow();
    this.derived = description.derive(this.doc, this.heard, null);
    const { kind, key, generation, me } = description;
    const name = copyName({ kind, key, generation, userId: me.id });
    this.copy = edge.openCopy(name, this.doc, () => this.noteRead());
    this.link = this.connect();
    this.awareness = this.link.awareness;
    this.names = new NamesSeen(this.awareness, this.me);
    this.offs = this.listen();
    this.snapshot = this.build();
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  readonly getSnapshot = (): Snapshot<Derived, Heard> => this.snapshot;

  /** As of this moment; a snapshot may be one frame old. */
  get saveState(): SaveState {
    return saveStateOf(this.link.state, { document: this.ready, copy: this.copy.isRead, barred: this.live.barred });
  }

  get canWrite(): boolean {
    return this.ready && this.heard.rights.writes;
  }

  /** Runs one act as one undo step. Does nothing, and returns false, without the right to write. */
  act(change: (writer: Writer) => void): boolean {
    if (!this.canWrite) return false;
    this.notUndone.show(null);
    this.history.step(() => act(this.writer, () => change(this.writer)));
    this.flush();
    return true;
  }

  select(id: string | null): void {
    if (id === this.selectedId) return;
    this.selectedId = id;
    this.awareness.setLocalStateField("item", id);
    this.flush();
  }

  /** Announces one sentence in the live region. The same sentence twice in a row is announced twice. */
  say(sentence: string): void {
    this.said = this.said === sentence ? `${sentence}\u00a0` : sentence;
    this.flush();
  }

  undo(): void {
    if (this.canWrite && this.history.canUndo) this.tell("Undone", () => this.history.undo());
  }
  redo(): void {
    if (this.canWrite && this.history.canRedo) this.tell("Redone", () => this.history.redo());
  }

  /** The person has seen which of their values others replaced. */
  closeOvertaken(): void {
    this.overtaken.close();
    this.flush();
  }

  /** Deletes this device's copy of the document and reads it again from the server. */
  async startAfresh(): Promise<void> {
    this.link.stop();
    await this.copy.clear();
    this.edge.reload();
  }

  /** Connects again after a final close, for instance once the person has signed in again. */
  reconnect(): void {
    this.link.reconnect();
  }

  /** Stops timers, socket and device copy. The session is not used afterwards. */
  end(): void {
    this.ended = true;
    this.cancelFrame?.();
    this.notUndone.end();
    this.listeners.clear();
    for (const off of this.offs) off();
    this.history.destroy();
    this.link.stop();
    this.copy.close();
    this.doc.destroy();
  }

  /** Derives everything again at the next frame though nothing in the document changed. */
  protected readonly deriveAgain = (): void => {
    this.docChanged = true;
    this.touch();
  };

  /** Called with each piece of server news before the session handles it. */
  protected hearFirst(_news: News): void {}

  private connect(): DocConnection {
    const { kind, key, generation, me } = this.of;
    const { origin, WebSocket } = this.edge;
    return connectDoc({
      ...{ origin, generation, doc: this.doc, name: { kind, key }, userId: me.id, ...VERSIONS[kind] },
      ...(WebSocket ? { WebSocket } : {}),
      awareness: { user: { id: me.id, name: me.name }, item: null },
      onRenamed: () => this.copy.rewrite(),
      onNews: (news) => this.takeNews(news),
      onState: (state) => this.takeLink(state),
      onFailed: () => this.live.failed(),
    });
  }

  private listen(): Unsubscribe[] {
    const { doc, awareness, edge } = this;
    const seen = () => this.touch();
    doc.on("update", this.deriveAgain);
    awareness.on("change", seen);
    return [
      () => doc.off("update", this.deriveAgain),
      () => this.overtaken.end(),
      () => this.names.stop(),
      () => awareness.off("change", seen),
      edge.onNetwork(() => this.noteNetwork()),
      edge.onShown(() => {
        this.link.doubt();
        this.flush();
      }),
    ];
  }

  /** Asks for a new snapshot in the next frame. */
  private touch(): void {
    if (this.cancelFrame !== null || this.ended) return;
    this.cancelFrame = this.edge.frame(() => this.flush());
  }

  /**
   * A socket whose network has gone stays open for a long time. When the device reports a network change the page
   * therefore reconnects: at once where the server can be reached, otherwise it knows that it is offline.
   */
  private noteNetwork(): void {
    if (this.link.state.closed !== null) return;
    this.link.disconnect();
    this.link.reconnect();
  }

  private readonly wordsOf = (at: ValueAt) => this.of.words(at, this.doc, this.derived);

  /** Makes a new snapshot now, and derives first where something that the page derives from has changed. */
  protected flush(): void {
    this.cancelFrame?.();
    this.cancelFrame = null;
    if (this.ended) return;
    this.deriveWhereNeeded();
    this.dropLostSelection();
    this.lookAtOwn();
    this.snapshot = this.build();
    for (const listener of this.listeners) listener();
  }

  private readsNow(): readonly unknown[] {
    return this.of.derivesFrom?.(this.heard) ?? [];
  }

  private deriveWhereNeeded(): void {
    const reads = this.readsNow();
    const same = reads.every((part, i) => part === this.derivedFrom[i]);
    if (same && !this.docChanged) return;
    this.docChanged = false;
    this.derivedFrom = reads;
    this.derived = this.of.derive(this.doc, this.heard, this.derived);
  }

  private dropLostSelection(): void {
    if (this.selectedId === null || this.of.has(this.derived, this.selectedId)) return;
    this.selectedId = null;
    this.awareness.setLocalStateField("item", null);
  }

  private lookAtOwn(): void {
    if (!this.copy.isRead) return;
    this.overtaken.remember(this.copy.notes);
    if (this.ready && this.link.state.synced) this.said = this.overtaken.look() ?? this.said;
    if (this.saveState === "saved") this.overtaken.settle();
  }

  private build(): Snapshot<Derived, Heard> {
    const { closed, stopping } = this.link.state;
    return Object.freeze({
      ...this.derived,
      ...this.heard,
      ...{ ready: this.ready, writes: this.canWrite },
      ...{ saveState: this.saveState, stopping },
      noLive: this.live.sentence,
      closeCode: closed,
      closeSentence: closed === null ? null : (closeText(closed) ?? null),
      places: placesOf(this.awareness, this.me),
      ...{ selectedId: this.selectedId, said: this.said },
      ...{ canUndo: this.history.canUndo, canRedo: this.history.canRedo },
      notUndone: this.notUndone.sentence,
      copy: this.copy.state,
      overtaken: this.overtaken.list,
    });
  }

  private tell(what: UndoVerb, run: () => UndoOutcome): void {
    const { touched, answer } = this.values.touchedDuring(this.doc, run);
    this.deriveWhereNeeded();
    const { values, wordsOf } = this;
    const stood = blockedValueWords(answer, { values, wordsOf, nameOf: (clientId) => this.names.nameOf(clientId) });
    const changed = touched.flatMap((at) => wordsOf(at) ?? []);
    this.notUndone.show(notUndoneWords(what, stood) ?? null);
    this.say(undoWords(what, changed, stood));
  }

  /** Read once it carries this program's version: an empty copy has none; the server alone migrates one of an older version. */
  private noteRead(): void {
    if (!this.ready && !this.ended && docVersion(this.doc) >= VERSIONS[this.of.kind].docVersion) {
      this.ready = true;
      this.history.manager.clear();
      this.docChanged = true;
    }
    this.touch();
  }

  private takeLink(state: DocConnection["state"]): void {
    if (state.connected) this.live.opened();
    else this.overtaken.leave();
    if (state.synced) this.noteRead();
    else this.touch();
  }

  private takeNews(news: News): void {
    if (news.t === "program") this.edge.heardBuild?.(news.build);
    this.hearFirst(news);
    const next = this.of.hear(withNews(this.heard, news), news);
    if (next === this.heard) return;
    this.heard = next;
    this.touch();
  }
}
