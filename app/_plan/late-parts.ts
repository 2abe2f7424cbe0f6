/** What the page fetches once it can be used, by how soon it is wanted: the editor, the rules that it did not start with, the load, then views and dialogs. */
import { lateBodyMap } from "#app/_body-map/late-body-map.ts";
import { lateItemLoad } from "#app/_load/late-load.ts";
import { lateAcceptedFinding, lateAcceptedList, lateAcceptForm } from "#app/_margin/late-accept.ts";
import { lateOffer, lateReader, lateReturn, lateReview } from "#app/_margin/late-review.ts";
import { lateThread } from "#app/_margin/late-thread.ts";
import { lateFigure } from "#app/_parts/late-figure.tsx";
import { lateOrderCopy, latePlateCopy, latePlateProposals, lateProposals } from "#app/_propose/late-propose.ts";
import { lateReadAloud } from "#app/_rate/late-read-aloud.ts";
import { lateChangesBar, lateComparing, latePlateChange, lateReadCount } from "#app/_rounds/late-rounds.ts";
import { lateScript } from "#app/_script/late-script.ts";
import { lateAccepted } from "#app/_session/accepted-now.ts";
import { lateChange } from "#app/_session/late-change.ts";
import { lateOpinion } from "#app/_session/late-opinion.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { lateComment } from "#app/_session/threads/late-comment.ts";
import { type LoadedLater, loadLaterOf } from "#lib/client/late.ts";

const view = loadLaterOf(() => import("./views.ts").then(({ VIEWS }) => VIEWS));

export const LATE = {
  fit: view("fit"),
  wholeClass: view("wholeClass"),
  readThrough: view("readThrough"),
  order: view("order"),
  paste: view("paste"),
  rehearsals: view("rehearsals"),
  rounds: view("rounds"),
  legend: view("legend"),
};
/** By view, the part that it is. */
export const LATE_VIEW = { "whole-class": "wholeClass", "read-through": "readThrough", rounds: "rounds" } as const;

export const latePartsOf = (session: PlanSession): readonly LoadedLater<unknown>[] => [
  lateScript,
  session.moreRules,
  lateItemLoad,
  lateThread,
  lateComment,
  lateAccepted,
  lateAcceptedFinding,
  lateAcceptForm,
  lateAcceptedList,
  latePlateProposals,
  ...Object.values(LATE),
  latePlateCopy,
  lateOrderCopy,
  lateProposals,
  lateReadAloud,
  lateReview,
  lateReader,
  lateOffer,
  lateReturn,
  lateComparing,
  lateChangesBar,
  lateReadCount,
  latePlateChange,
  lateFigure,
  lateBodyMap,
  lateChange,
  lateOpinion,
];
