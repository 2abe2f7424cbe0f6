"use client";
/**
 * Fewer set-ups: a block as it stands beside the order whose changes take the fewest seconds, with what is saved, what
 * holds it and what the checks find. While somebody else writes, the preview is worked out again and says so.
 */
import { useMemo, useRef, useState } from "react";
import { Changed } from "#app/_parts/changed.tsx";
import { SelectField } from "#app/_parts/choice.tsx";
import { Dialog } from "#app/_parts/dialog.tsx";
import { nameOf } from "#app/_session/item-words.ts";
import { asShown, LOOK_ONLY, TAKEN_IN_ONE_STEP } from "#app/_session/previews.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useFresh } from "#app/_session/use-fresh.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { plural } from "#lib/plan/format.ts";
import { itemById } from "#lib/plan/lookup.ts";
import type { Heading, Plan } from "#lib/plan/schema.ts";
import { blockAround } from "#lib/plan/ties.ts";
import { NoBlock } from "./no-block.tsx";
import styles from "./order.module.css";
import { OrderView } from "./order-view.tsx";
import { UP_TO_DATE } from "./order-words.ts";
import { type OrderPreview, orderPreview, type SolvedBlock, solveBlock, solvedFrom } from "./preview.ts";
import { takeOrder } from "./take-order.ts";

interface OrderDialogProps {
  readonly session: PlanSession;
  /** The item or heading it was opened for; null where none is chosen. */
  readonly itemId: string | null;
  readonly onClosed: () => void;
}

export function OrderDialog({ session, itemId, onClosed }: OrderDialogProps) {
  const snap = useSnapshot(session);
  const { plan } = snap;
  const headings = plan.items.filter((item): item is Heading => item.kind === "heading");
  const [chosen, setChosen] = useState<string | null>(null);
  const here = chosen ?? (itemId === null ? undefined : blockAround(plan, itemId)?.heading.id);
  const heading = headings.find((h) => h.id === here)?.id ?? null;
  const closer = useRef<(() => void) | null>(null);
  const stray = heading === null && itemId !== null ? itemById(plan, itemId) : undefined;
  if (heading === null) {
    return (
      <Dialog title="Fewer set-ups" size="sheet" onClose={onClosed} closer={closer}>
        <NoBlock
          session={session}
          above={stray && nameOf(plan, stray)}
          hasHeadings={headings.length > 0}
          onMade={setChosen}
        />
        {headings.length > 0 && <BlockChoice plan={plan} headings={headings} value="" onChoose={setChosen} />}
      </Dialog>
    );
  }
  const choice = <BlockChoice plan={plan} headings={headings} value={heading} onChoose={setChosen} />;
  return <OpenBlock key={heading} {...{ session, heading, closer, onClosed, choice }} />;
}

interface ChoiceProps {
  readonly plan: Plan;
  readonly headings: readonly Heading[];
  readonly value: string;
  readonly onChoose: (id: string) => void;
}

function BlockChoice({ plan, headings, value, onChoose }: ChoiceProps) {
  const options = headings.map((heading) => {
    const moves = (blockAround(plan, heading.id)?.items ?? []).filter((item) => item.kind === "move").length;
    return { value: heading.id, label: `${nameOf(plan, heading)} (${plural(moves, "move")})` };
  });
  const none = value === "" ? [{ value: "", label: "choose a block" }] : [];
  return (
    <div className={styles.choice}>
      <SelectField label="Block" value={value} options={[...none, ...options]} onChoose={onChoose} />
    </div>
  );
}

interface OpenBlockProps {
  readonly session: PlanSession;
  readonly heading: string;
  readonly closer: React.RefObject<(() => void) | null>;
  readonly onClosed: () => void;
  readonly choice: React.ReactNode;
}

function OpenBlock({ session, heading, closer, onClosed, choice }: OpenBlockProps) {
  const snap = useSnapshot(session);
  const { plan } = snap;
  const [free, setFree] = useState(false);
  const { preview, solved, from } = useOrderPreview(plan, heading, free);
  const shown = useMemo(() => asShown(preview), [preview]);
  const fresh = useFresh(session, snap, shown);
  const better = preview !== null && preview.moved.length > 0;
  const take = () => {
    if (takeOrder(session, { heading, free, shown, solved, from })) closer.current?.();
  };
  return (
    <Dialog
      title="Fewer set-ups"
      size="sheet"
      onClose={onClosed}
      closer={closer}
      foot={better && <Foot writes={session.canWrite} onTake={take} />}
    >
      {choice}
      <Changed fresh={fresh} what={UP_TO_DATE} />
      {preview === null ? (
        <p className="problem">{solved.order.ok ? "" : solved.order.say}</p>
      ) : (
        <OrderView {...{ plan, preview, free, setFree }} unheld={solved.unheld} />
      )}
    </Dialog>
  );
}

interface BlockPreview {
  /** Null where no order is found. */
  readonly preview: OrderPreview | null;
  readonly solved: SolvedBlock;
  /** What `solved` was worked out from. */
  readonly from: string;
}

/** The search runs again only when something changed that the order depends on; the preview with every change. */
function useOrderPreview(plan: Plan, heading: string, free: boolean): BlockPreview {
  const from = useMemo(() => solvedFrom(plan, heading), [plan, heading]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: slow, and the text is all that it depends on
  const solved = useMemo(() => solveBlock(plan, heading), [from]);
  const preview = useMemo(
    () => (solved.order.ok ? orderPreview(plan, solved.order, { heading, free }) : null),
    [plan, solved, heading, free],
  );
  return { preview, solved, from };
}

function Foot({ writes, onTake }: { readonly writes: boolean; readonly onTake: () => void }) {
  return (
    <div className="spread">
      <p className="small quiet">{writes ? TAKEN_IN_ONE_STEP : LOOK_ONLY}</p>
      <button type="button" className="button button-strong" disabled={!writes} onClick={onTake}>
        Take this order
      </button>
    </div>
  );
}
