/** What the plan page fetches once it can be used: the editor first, then views and dialogs by how soon they are wanted. */
import { lateReview } from "#app/_margin/late-review.ts";
import { lateReadAloud } from "#app/_rate/late-read-aloud.ts";
import { lateScript } from "#app/_script/late-script.ts";
import { loadLater } from "#lib/client/late.ts";

export const LATE = {
  fit: loadLater(() => import("#app/_fit/fit-dialog.tsx").then((module) => module.FitDialog)),
  wholeClass: loadLater(() => import("#app/_lanes/whole-class.tsx").then((module) => module.WholeClass)),
  readThrough: loadLater(() => import("#app/_read/read-through.tsx").then((module) => module.ReadThrough)),
  order: loadLater(() => import("#app/_order/order-dialog.tsx").then((module) => module.OrderDialog)),
  paste: loadLater(() => import("#app/_paste/paste-dialog.tsx").then((module) => module.PasteDialog)),
  rehearsals: loadLater(() =>
    import("#app/_rehearsal/rehearsals-dialog.tsx").then((module) => module.RehearsalsDialog),
  ),
  marks: loadLater(() => import("./legend.tsx").then((module) => module.LegendDialog)),
};
export const LATE_PARTS = [lateScript, ...Object.values(LATE), lateReadAloud, lateReview];
