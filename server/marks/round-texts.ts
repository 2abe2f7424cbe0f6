/** The plans of one person as they were at each step of their rounds, with what others had said and proposed by then. */
import { type Comment, listCommentsOn, listMomentsOffered, type RoundMoment } from "#db/repos/progress-repo.ts";
import { listProposals, type ProposalRow } from "#db/repos/proposal-repo.ts";
import { listRounds, type RoundRow } from "#db/repos/round-repo.ts";
import { canonicalJson } from "#lib/canonical/canonical.ts";
import { moveName } from "#lib/plan/format.ts";
import type { Plan } from "#lib/plan/schema.ts";
import type { RoundText, SaidByThen, TextThen } from "#lib/progress/findings.ts";
import type { ProposalPart } from "#lib/proposal/parts.ts";
import type { Springline } from "#server/context/springline.ts";

/** All that others wrote about one plan. */
interface Said {
  readonly comments: readonly Comment[];
  readonly proposals: readonly ProposalRow[];
  readonly rounds: readonly RoundRow[];
  readonly moments: readonly RoundMoment[];
}

/** Of the rounds that this person offered, the oldest first. */
export function roundTexts(app: Pick<Springline, "db">, userId: string): RoundText[] {
  const moments = listMomentsOffered(app.db, userId);
  const plans = new Set(moments.map(({ planId }) => planId));
  const comments = listCommentsOn(app.db, [...plans]);
  const said = new Map(
    [...plans].map((id): [string, Said] => [
      id,
      {
        comments: comments.filter(({ planId }) => planId === id),
        proposals: listProposals(app.db, id),
        rounds: listRounds(app.db, id),
        moments: moments.filter(({ planId }) => planId === id),
      },
    ]),
  );
  return moments.flatMap((moment): RoundText[] => {
    const { kind, planId, round, at, findings, planJson } = moment;
    const own = said.get(planId);
    if (!own || (kind !== "offered" && kind !== "returned" && kind !== "signed")) return [];
    const text = planJson === null ? null : textThen(JSON.parse(planJson) as Plan); // kept as canonical JSON of a plan
    return [{ planId, round, kind, at, findings, text, asked: askedBy(own, moment) }];
  });
}

function textThen(plan: Plan): TextThen {
  const { items, standards, equipment } = plan;
  const names = items.map((item) => [item.id, item.kind === "move" ? moveName(plan, item).toLowerCase() : ""] as const);
  return { items: new Map(names), ground: canonicalJson({ standards: standards ?? null, equipment }) };
}

/** Whoever said it, also in a thread that is settled. */
function askedBy({ comments, proposals, rounds, moments }: Said, { at, round }: RoundMoment): SaidByThen {
  const said = comments.filter((comment) => comment.at <= at);
  const last = rounds.find(({ number }) => number === round - 1);
  const returns = moments.filter((moment) => moment.round === round - 1 && moment.kind !== "offered");
  const words = [
    ...(last?.mainPoints ?? []),
    ...returns.flatMap(({ note }) => note ?? []),
    ...said.flatMap(({ anchor, body, at: then }) =>
      anchor.kind === "plan" && then >= (last?.offeredAt ?? 0) ? [body] : [],
    ),
  ];
  return {
    items: new Set([
      ...said.flatMap(({ anchor }) => itemsOf(anchor)),
      ...proposals.filter((made) => made.at <= at).flatMap(({ parts }) => parts.flatMap(itemsOfPart)),
    ]),
    rules: new Set(said.flatMap(({ anchor }) => (anchor.kind === "finding" ? [anchor.rule] : []))),
    words: words.filter((one) => one.trim() !== ""),
  };
}

function itemsOf(anchor: Comment["anchor"]): readonly string[] {
  if (anchor.kind === "plan") return [];
  return anchor.kind === "finding" ? anchor.itemIds : [anchor.itemId];
}

const itemsOfPart = (part: ProposalPart): readonly string[] => (part.kind === "order" ? part.becomes : [part.item]);
