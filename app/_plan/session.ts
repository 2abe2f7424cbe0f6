/**
 * A plan as a kind of shared document: what is worked out from it, what its news mean, and the studio it is read with.
 * Components read frozen snapshots through `useSnapshot` and act through `acts.ts`.
 */
import type { ActUndo } from "#lib/client/act-undo.ts";
import type { DocDescription } from "#lib/client/doc-session/description.ts";
import type { Edge } from "#lib/client/doc-session/edge.ts";
import { DocSession } from "#lib/client/doc-session/session.ts";
import type { News } from "#lib/protocol/messages.ts";
import type { PlanStudio } from "#server/studio-data/plan-studio.ts";
import { deriver } from "./derive.ts";
import { planUndo } from "./plan-undo.ts";
import { planValues, planWords } from "./plan-values.ts";
import { fetchFindings, SecondOpinion, type Served } from "./second-opinion.ts";
import type { Derived, Me, NewsState, PlanPageProps } from "./session-types.ts";
import { fetchStudio, StudioLink } from "./studio-link.ts";

/** The studio as it is now: held apart, since the description is there before the session is. */
interface StudioNow {
  studio: PlanStudio;
  /** What the server found where this page found something else. */
  served: Served | null;
}

export class PlanSession extends DocSession<Derived, NewsState, ActUndo> {
  declare readonly me: Me;
  readonly planId: string;
  private readonly now: StudioNow;
  private readonly studioLink: StudioLink;
  private readonly secondOpinion: SecondOpinion;

  constructor(props: PlanPageProps, edge: Edge) {
    const now: StudioNow = { studio: props.studio, served: null };
    super(planDescription(props, now), edge);
    this.planId = props.planId;
    this.now = now;
    this.studioLink = new StudioLink(props.studio.mark, {
      ask: () => fetchStudio(props.planId),
      take: (studio) => this.takeStudio(studio),
      later: edge.later,
    });
    this.secondOpinion = new SecondOpinion({
      own: () => this.getSnapshot(),
      ask: () => fetchFindings(props.planId),
      take: (served) => this.takeFindings(served),
      later: edge.later,
    });
  }

  /** Library, machines and standards as the plan is read with them now. */
  get studio(): PlanStudio {
    return this.now.studio;
  }

  override end(): void {
    this.studioLink.end();
    this.secondOpinion.end();
    super.end();
  }

  protected override hearFirst(news: News): void {
    if (news.t === "studio") this.studioLink.hear(news.mark);
    if (news.t === "checked") this.secondOpinion.hear(news);
  }

  /** The document is only read again: nothing typed and no undo step is touched. */
  private takeStudio(studio: PlanStudio): void {
    this.now.studio = studio;
    this.say("Your studio has changed its library, machines or standards: this plan was checked again.");
  }

  /** The server signs by what it finds itself. */
  private takeFindings(served: Served): void {
    this.now.served = served;
    this.deriveAgain();
    this.say(
      "The server finds something else in this plan than this page does. Shown is what the server finds; reload the page.",
    );
  }
}

function planDescription(props: PlanPageProps, now: StudioNow): DocDescription<Derived, NewsState, ActUndo> {
  const derive = deriver();
  return {
    kind: "plan",
    key: props.planId,
    generation: props.generation,
    me: props.me,
    heard: { rights: props.rights, present: [], state: props.state, threads: [] },
    hear: newsState,
    derive: (doc) => derive(doc, now.studio, now.served),
    derivesFrom: () => [now.studio],
    has: (derived, id) => derived.plan.items.some((item) => item.id === id),
    makeUndo: planUndo,
    values: planValues,
    words: (at, doc, { plan }) => planWords(at, doc, { ...plan, moves: { ...now.studio.moves, ...plan.moves } }),
  };
}

function newsState(now: NewsState, news: News): NewsState {
  switch (news.t) {
    case "state":
      return { ...now, state: news.state };
    case "threads":
      return { ...now, threads: news.threads };
    default:
      return now;
  }
}
