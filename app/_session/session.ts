/**
 * A plan as a kind of shared document: what is worked out from it, how it takes the server's news, and the studio it is read
 * with. Components read frozen snapshots through `useSnapshot` and act through `acts.ts`.
 */

import { typedWordsKey } from "#app/_parts/kept/typed-words-key.ts";
import type { Marker } from "#lib/analysis/marks.ts";
import type { ActUndo } from "#lib/client/act-undo.ts";
import type { DocDescription } from "#lib/client/doc-session/description.ts";
import type { Edge } from "#lib/client/doc-session/edge.ts";
import type { SaveState } from "#lib/client/doc-session/save-state.ts";
import { DocSession } from "#lib/client/doc-session/session.ts";
import { loadLater } from "#lib/client/late.ts";
import type { Formats } from "#lib/formats/formats.ts";
import type { News, ThreadView } from "#lib/protocol/messages.ts";
import type { PlanStudio } from "#server/studio-data/plan-studio.ts";
import { ChangesShown } from "./changes-shown.ts";
import { deriver } from "./derive.ts";
import { lateOpinion } from "./late-opinion.ts";
import { lateRules, rulesHere } from "./late-rules.ts";
import { planUndo } from "./plan-undo.ts";
import { planValues, planValueWords } from "./plan-values.ts";
import { SecondOpinion, type Served } from "./second-opinion.ts";
import type { Derived, Me, NewsState, PlanPageProps, SessionSnapshot } from "./session-types.ts";
import { fetchStudio, StudioLink } from "./studio-link.ts";
import { ToldLines } from "./typed/told-lines.ts";
import { TypedWords, tabStore } from "./typed/typed-words.ts";

/** One marker for the page, since it keeps what it has hashed. */
function newMarkerOnce(): () => Promise<Marker> {
  let made: Marker | null = null;
  return async () => {
    const { newMarker } = await lateOpinion.fetch();
    made ??= newMarker();
    return made;
  };
}

/** Held apart from the session, which is made after its description. */
interface StudioNow {
  studio: PlanStudio;
  /** The server's findings, where this page found something else. */
  served: Served | null;
}

/** While the page has not heard all that it is told as it joins. */
const JOINING: ReadonlySet<SaveState> = new Set(["opening", "sending"]);

export class PlanSession extends DocSession<Derived, NewsState, ActUndo> {
  declare readonly me: Me;
  readonly planId: string;
  /** The reader's, for what is said. */
  readonly formats: Formats;
  /** The edition that it was made from; null for none. */
  readonly origin: NonNullable<PlanPageProps["origin"]> | null;
  /** The person may propose changes of the plan: a lead, of a plan that is not their own. */
  readonly proposes: boolean;
  /** The rules that this page did not start with. Once they are here, the plan has been checked with them. */
  readonly moreRules = loadLater(async () => {
    this.canBeUsed();
    const rules = await lateRules.fetch();
    this.flush();
    return rules;
  });
  /** What has changed on the plates since the text that this person compares with. */
  readonly changes = new ChangesShown();
  /** Words that this person is typing about the plan. */
  readonly typed: TypedWords;
  /** What others did that this person should see before it goes. */
  readonly lines = new ToldLines();
  private drawn = false;
  private canBeUsed = (): void => undefined;
  /** Resolves when the page first asks for the rest of the rules, which it does once it can be used. */
  private readonly usable = new Promise<void>((resolve) => {
    this.canBeUsed = resolve;
  });
  private readonly now: StudioNow;
  private readonly studioLink: StudioLink;
  private readonly secondOpinion: SecondOpinion;

  constructor(props: PlanPageProps, edge: Edge) {
    const now: StudioNow = { studio: props.studio, served: null };
    super(planDescription(props, now), edge);
    this.planId = props.planId;
    this.formats = props.formats;
    this.origin = props.origin ?? null;
    this.proposes = props.may.propose;
    this.typed = new TypedWords(typedWordsKey(props.me.id, props.planId), tabStore());
    this.now = now;
    this.studioLink = new StudioLink(props.studio.mark, {
      ask: () => fetchStudio(props.planId),
      take: (studio) => this.takeStudio(studio),
      later: edge.later,
    });
    const marker = newMarkerOnce();
    this.secondOpinion = new SecondOpinion({
      own: () => this.getSnapshot(),
      marker: () => this.usable.then(() => this.moreRules.fetch()).then(marker),
      ask: async () => (await lateOpinion.fetch()).fetchFindings(props.planId),
      take: (served) => this.takeFindings(served),
      later: edge.later,
    });
  }

  /** The library, machines and standards that the plan is read with now. */
  get studio(): PlanStudio {
    return this.now.studio;
  }

  override end(): void {
    this.studioLink.end();
    this.secondOpinion.end();
    super.end();
  }

  /** Not before it is known how many threads each plate has, which would move plates, unless the server cannot be asked. Once true it stays true. */
  canBeDrawn({ ready, whole, saveState }: SessionSnapshot): boolean {
    this.drawn ||= ready && (whole || !JOINING.has(saveState));
    return this.drawn;
  }

  protected override hearFirst(news: News): void {
    if (news.t === "studio") this.studioLink.hear(news.mark);
    if (news.t === "checked") this.secondOpinion.hear(news);
  }

  /** The document is only read again; what is typed and the steps of undo stay. */
  private takeStudio(studio: PlanStudio): void {
    this.now.studio = studio;
    this.say("The studio’s library, machines or standards have changed. This plan was checked again.");
  }

  /** A plan is signed by the server's findings, so those are shown. */
  private takeFindings(served: Served): void {
    this.now.served = served;
    this.deriveAgain();
    this.say(
      "The server’s findings for this plan differ from this page’s. The server’s are shown now. Reload the page.",
    );
  }
}

function planDescription(props: PlanPageProps, now: StudioNow): DocDescription<Derived, NewsState, ActUndo> {
  const derive = deriver(rulesHere);
  return {
    kind: "plan",
    key: props.planId,
    generation: props.generation,
    me: props.me,
    heard: heardAtStart(props),
    hear: newsState,
    start: props.doc,
    derive: (doc) => derive(doc, now.studio, { served: now.served, atStart: props.doc?.findings }),
    derivesFrom: () => [now.studio, rulesHere()],
    has: (derived, id) => derived.plan.items.some((item) => item.id === id),
    makeUndo: planUndo,
    values: planValues,
    words: (at, doc, { plan }) =>
      planValueWords(at, doc, { ...plan, moves: { ...now.studio.moves, ...plan.moves } }, props.formats),
  };
}

function heardAtStart({ rights, state, doc }: PlanPageProps): NewsState {
  const nothing = { rights, present: [], state, threads: [], accepted: [], proposals: [], whole: false };
  const counts = { openThreadsAtStart: doc?.openThreads ?? null };
  const news: readonly News[] = doc?.news === undefined ? [] : JSON.parse(doc.news);
  return news.reduce<NewsState>(newsState, { ...nothing, ...counts });
}

function newsState(now: NewsState, news: News): NewsState {
  switch (news.t) {
    case "state":
      return { ...now, state: news.state };
    case "threads":
      return { ...now, threads: news.threads, openThreadsAtStart: null };
    case "thread":
      return { ...now, threads: withThread(now.threads, news.thread) };
    case "accepted":
      return { ...now, accepted: news.accepted };
    case "proposals":
      return { ...now, proposals: news.proposals };
    // The last of those that a page is told as it joins.
    case "studio":
      return now.whole ? now : { ...now, whole: true };
    default:
      return now;
  }
}

/** In its place, or at the end when it is new. */
function withThread(threads: readonly ThreadView[], thread: ThreadView): readonly ThreadView[] {
  const at = threads.findIndex(({ id }) => id === thread.id);
  return at < 0 ? [...threads, thread] : threads.with(at, thread);
}
