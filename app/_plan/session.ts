/**
 * A plan as a kind of shared document: what is worked out from it, what its news mean, and the studio it is read with.
 * Components read frozen snapshots through `useSnapshot` and act through `acts.ts`.
 */
import type { ActUndo } from "#lib/client/act-undo.ts";
import type { DocDescription } from "#lib/client/doc-session/description.ts";
import type { Edge } from "#lib/client/doc-session/edge.ts";
import { DocSession } from "#lib/client/doc-session/session.ts";
import type { News } from "#lib/protocol/messages.ts";
import type { PlanStudio } from "#server/plans/plan-studio.ts";
import { derive } from "./derive.ts";
import { planUndo } from "./plan-undo.ts";
import { planValues, planWords } from "./plan-values.ts";
import type { Derived, Me, NewsState, PlanPageProps } from "./session-types.ts";
import { fetchStudio, StudioLink } from "./studio-link.ts";

/** The studio as it is now: held apart, since the description is there before the session is. */
interface StudioNow {
  studio: PlanStudio;
}

export class PlanSession extends DocSession<Derived, NewsState, ActUndo> {
  declare readonly me: Me;
  readonly planId: string;
  private readonly now: StudioNow;
  private readonly studioLink: StudioLink;

  constructor(props: PlanPageProps, edge: Edge) {
    const now = { studio: props.studio };
    super(planDescription(props, now), edge);
    this.planId = props.planId;
    this.now = now;
    this.studioLink = new StudioLink(props.studio.mark, {
      ask: () => fetchStudio(props.planId),
      take: (studio) => this.takeStudio(studio),
      later: edge.later,
    });
  }

  /** Library, machines and standards as the plan is read with them now. */
  get studio(): PlanStudio {
    return this.now.studio;
  }

  override end(): void {
    this.studioLink.end();
    super.end();
  }

  protected override hearFirst(news: News): void {
    if (news.t === "studio") this.studioLink.hear(news.mark);
  }

  /** The document is only read again: nothing typed and no undo step is touched. */
  private takeStudio(studio: PlanStudio): void {
    this.now.studio = studio;
    this.say("Your studio has changed its library, machines or standards: this plan was checked again.");
  }
}

function planDescription(props: PlanPageProps, now: StudioNow): DocDescription<Derived, NewsState, ActUndo> {
  return {
    kind: "plan",
    key: props.planId,
    generation: props.generation,
    me: props.me,
    heard: { rights: props.rights, present: [], state: props.state, threads: [], serverFindings: null },
    hear: newsState,
    derive: (doc, _heard, before) => derive(doc, now.studio, before),
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
    case "findings":
      return { ...now, serverFindings: { hash: news.hash, findings: news.findings } };
    default:
      return now;
  }
}
