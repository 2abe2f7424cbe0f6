"use client";
/** Links from a slip to the items it is about. */
import { nameOf } from "#app/_session/item-words.ts";
import type { PlanSession } from "#app/_session/session.ts";
import { useSnapshot } from "#app/_session/use-session.ts";
import { itemById } from "#lib/plan/lookup.ts";

/** How many names a slip shows at most; a finding about everything needs no list. */
const MOST_LINKS = 4;

/** Selects an item and moves the focus to it on the rail, where this screen has one. */
export function jump(session: PlanSession, itemId: string): void {
  session.select(itemId);
  const item = document.getElementById(`rail-${itemId}`);
  item?.focus({ preventScroll: true });
  item?.scrollIntoView({ block: "nearest" });
}

export function JumpLinks({ session, ids }: { readonly session: PlanSession; readonly ids: readonly string[] }) {
  const { plan } = useSnapshot(session);
  const shown = ids.slice(0, MOST_LINKS).flatMap((id) => itemById(plan, id) ?? []);
  const only = shown.length === 1;
  return (
    <>
      {shown.map((item) => {
        const side = item.kind === "move" && (item.side === "left" || item.side === "right") ? `, ${item.side}` : "";
        const name = `${nameOf(plan, item)}${side}`;
        return (
          <button
            key={item.id}
            type="button"
            className="text-button text-button-low small"
            onClick={() => jump(session, item.id)}
          >
            {only ? (
              <>
                Go to it<span className="visually-hidden">: {name}</span>
              </>
            ) : (
              name
            )}
          </button>
        );
      })}
      {ids.length > MOST_LINKS && <span className="quiet small">and {ids.length - MOST_LINKS} more</span>}
    </>
  );
}
