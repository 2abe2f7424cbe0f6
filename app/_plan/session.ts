/**
 * One open plan page outside React: the shared document, its socket, its copy on this device, one undo for the whole
 * page, presence and news. Components read frozen snapshots through `useSnapshot` and act through `acts.ts`.
 * `held-sessions.ts` counts who uses one.
 */
import { IndexeddbPersistence } from "y-indexeddb";
import type { Awareness } from "y-protocols/awareness";
import * as Y from "yjs";
import { type DeviceCopy, watchDeviceCopy } from "#lib/client/device-copy.ts";
import { type ConnectionState, connectDoc, type DocConnection } from "#lib/client/provider.ts";
import { docVersion, EDITOR_VERSION, PLAN_DOC_VERSION } from "#lib/doc/layout.ts";
import { act, type Writer } from "#lib/doc/write.ts";
import { closeText } from "#lib/protocol/close.ts";
import type { News } from "#lib/protocol/messages.ts";
import type { PlanStudio } from "#server/plans/plan-studio.ts";
import { derive } from "./derive.ts";
import { placesOf } from "./places.ts";
import { type NewsState, newsState, saveStateOf } from "./session-news.ts";
import type { Derived, Me, PlanPageProps, SessionSnapshot } from "./session-types.ts";
import { fetchStudio, StudioLink } from "./studio-link.ts";
import { PageUndo } from "./undo.ts";

export class PlanSession {
  readonly doc = new Y.Doc();
  readonly writer: Writer = { doc: this.doc, origin: { of: "this page" } };
  readonly awareness: Awareness;
  readonly planId: string;
  readonly me: Me;
  readonly undo: PageUndo;
  private taken: PlanStudio;

  private readonly link: DocConnection;
  private readonly studioLink: StudioLink;
  private readonly store: IndexeddbPersistence;
  private readonly copy: DeviceCopy;
  private readonly listeners = new Set<() => void>();
  private news: NewsState;
  private derived: Derived;
  private snapshot: SessionSnapshot;
  private ready = false;
  private selectedId: string | null = null;
  private said = "";
  private docChanged = false;
  private frame: (() => void) | null = null;
  private ended = false;

  constructor(props: PlanPageProps) {
    this.planId = props.planId;
    this.me = props.me;
    this.taken = props.studio;
    this.studioLink = new StudioLink(props.studio.mark, {
      ask: () => fetchStudio(props.planId),
      take: (studio) => this.takeStudio(studio),
      later(run, ms) {
        const timer = setTimeout(run, ms);
        return () => clearTimeout(timer);
      },
    });
    this.news = { rights: props.rights, present: [], state: props.state, threads: [], serverFindings: null };
    this.undo = new PageUndo(this.writer, () => this.touch());
    this.derived = derive(this.doc, this.studio, null);
    this.store = new IndexeddbPersistence(deviceCopyName(props), this.doc);
    this.copy = watchDeviceCopy(this.store, this.doc, this.touch);
    this.store.on("synced", () => this.noteRead());
    this.link = this.connect(props.generation);
    this.awareness = this.link.awareness;
    this.awareness.on("change", this.touch);
    this.doc.on("update", this.noteUpdate);
    addEventListener("offline", this.noteNetwork);
    addEventListener("online", this.noteNetwork);
    this.snapshot = this.build();
  }

  private connect(generation: string): DocConnection {
    return connectDoc({
      origin: location.origin.replace(/^http/, "ws"),
      name: { kind: "plan", key: this.planId },
      doc: this.doc,
      docVersion: PLAN_DOC_VERSION,
      editorVersion: EDITOR_VERSION,
      generation,
      userId: this.me.id,
      awareness: { user: { id: this.me.id, name: this.me.name }, item: null },
      onNews: (news) => this.takeNews(news),
      onState: (state) => this.takeLink(state),
    });
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  readonly getSnapshot = (): SessionSnapshot => this.snapshot;

  /** Library, machines and standards as the plan is read with them now. */
  get studio(): PlanStudio {
    return this.taken;
  }

  /** Runs one discrete act as one undo step. Without the right to write: nothing. */
  act(change: (writer: Writer) => void): boolean {
    if (!this.canWrite) return false;
    this.undo.step(() => act(this.writer, () => change(this.writer)));
    this.flush();
    return true;
  }

  get canWrite(): boolean {
    return this.ready && this.news.rights.writes;
  }

  select(id: string | null): void {
    if (id === this.selectedId) return;
    this.selectedId = id;
    this.awareness.setLocalStateField("item", id);
    this.flush();
  }

  /** Says one sentence in the live region. The same sentence twice in a row is said twice. */
  say(sentence: string): void {
    this.said = this.said === sentence ? `${sentence}\u00a0` : sentence;
    this.flush();
  }

  takeBack(): void {
    if (this.canWrite) this.undo.undo();
    this.flush();
  }
  bringBack(): void {
    if (this.canWrite) this.undo.redo();
    this.flush();
  }

  /** Lets go of what this device keeps of the document and reads it again from the server. */
  async startAfresh(): Promise<void> {
    this.link.stop();
    await this.store.clearData();
    location.reload();
  }

  /** Connects again after a final close, for instance once the person has signed in again. */
  reconnect(): void {
    this.link.reconnect();
  }

  /** Stops timers, socket and device copy. The session is not used afterwards. */
  end(): void {
    this.ended = true;
    this.frame?.();
    this.listeners.clear();
    this.doc.off("update", this.noteUpdate);
    removeEventListener("offline", this.noteNetwork);
    removeEventListener("online", this.noteNetwork);
    this.awareness.off("change", this.touch);
    this.undo.destroy();
    this.link.stop();
    this.studioLink.end();
    void this.store.destroy();
    this.doc.destroy();
  }

  /** Asks for a new snapshot in the next animation frame; a hidden page, which has none, gets it by a timer. */
  private readonly touch = (): void => {
    if (this.frame !== null || this.ended) return;
    const run = () => this.flush();
    const frame = requestAnimationFrame(run);
    const timer = setTimeout(run, 250);
    this.frame = () => {
      cancelAnimationFrame(frame);
      clearTimeout(timer);
      this.frame = null;
    };
  };

  /**
   * A socket whose network has gone stays open for half a minute. When the browser says that the network changed, the
   * connection is made anew: at once where the server can still be reached, else the page knows that it is offline.
   */
  private readonly noteNetwork = (): void => {
    if (this.link.state.closed !== null) return;
    this.link.disconnect();
    this.link.reconnect();
  };

  private readonly noteUpdate = (): void => {
    this.docChanged = true;
    this.touch();
  };

  private flush(): void {
    this.frame?.();
    if (this.ended) return;
    if (this.docChanged) this.derived = derive(this.doc, this.studio, this.derived);
    this.docChanged = false;
    this.dropLostSelection();
    this.snapshot = this.build();
    for (const listener of this.listeners) listener();
  }

  private dropLostSelection(): void {
    const gone = this.selectedId !== null && !this.derived.plan.items.some((item) => item.id === this.selectedId);
    if (!gone) return;
    this.selectedId = null;
    this.awareness.setLocalStateField("item", null);
  }

  private build(): SessionSnapshot {
    const link = this.link.state;
    const closeCode = link.closed;
    return Object.freeze({
      ...this.derived,
      ...this.news,
      ready: this.ready,
      saveState: saveStateOf(this.ready, link),
      closeCode,
      closeSentence: closeCode === null ? null : (closeText(closeCode) ?? null),
      places: placesOf(this.awareness, this.me),
      selectedId: this.selectedId,
      canUndo: this.undo.canUndo,
      canRedo: this.undo.canRedo,
      said: this.said,
      copy: this.copy.state,
    });
  }

  /** A document counts as read once it says its version: an empty device copy says nothing. */
  private noteRead(): void {
    if (this.ready || this.ended || docVersion(this.doc) === 0) return;
    this.ready = true;
    this.undo.manager.clear();
    this.noteUpdate();
  }

  private takeLink(state: ConnectionState): void {
    if (state.synced) this.noteRead();
    this.touch();
  }

  /** The document is only read again: nothing typed and no undo step is touched. */
  private takeStudio(studio: PlanStudio): void {
    this.taken = studio;
    this.docChanged = true;
    this.say("Your studio has changed its library, machines or standards: this plan was checked again.");
  }

  private takeNews(news: News): void {
    if (news.t === "studio") this.studioLink.hear(news.mark);
    const next = newsState(this.news, news);
    if (next === this.news) return;
    this.news = next;
    this.touch();
  }
}

/** Name of the copy on this device: one a document, history and person, so that nobody reads another one's words. */
export const deviceCopyName = (p: PlanPageProps) => `springline/plan/${p.planId}/${p.generation}/${p.me.id}`;
