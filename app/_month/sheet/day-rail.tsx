/** A day's classes on its rail: a mark each that can be opened, moved and dragged, and their words. */
import type { CSSProperties } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { dayOfMonth, shortDayName, timeWords } from "#lib/formats/dates.ts";
import { PLUS } from "#lib/tide/rail-labels.ts";
import type { LabelPart, RailLabel, TideDay, TideMark } from "#lib/tide/types.ts";
import styles from "./sheet.module.css";
import type { SheetHands, SheetShown } from "./sheet-types.ts";

export interface DayPlaceProps {
  readonly day: TideDay;
  readonly shown: SheetShown;
  readonly hands: SheetHands;
}

export function DayRail({ day, shown, hands }: DayPlaceProps) {
  const lines = 1 + Math.max(-1, ...day.labels.map(({ line }) => line));
  return (
    <div className={styles.rail} style={{ "--lines": String(lines) } as CSSProperties}>
      {day.holiday !== null && (
        <span className={styles.holiday} title={day.holiday}>
          {day.holiday}
        </span>
      )}
      {day.marks.map((mark) => (
        <ClassMark key={mark.slot.id} mark={mark} shown={shown} hands={hands} />
      ))}
      {day.labels.map((label) => (
        <Label key={label.parts[0]?.slot ?? label.x} label={label} shown={shown} hands={hands} />
      ))}
    </div>
  );
}

/** What the day and time of a class on its way take beside its mark. */
const TOWARD_PX = 110;

interface MarkProps {
  readonly mark: TideMark;
  readonly shown: SheetShown;
  readonly hands: SheetHands;
}

/** What else is said of a class than its own words. */
export function markWords(mark: TideMark, { proposed, changed, guests }: SheetShown): string {
  const { slot } = mark;
  const there = guests.filter((guest) => guest.slot === slot.id).map(({ name }) => `${name} is here`);
  const since = changed.get(slot.id);
  return [
    mark.words,
    ...(since ? [since] : []),
    ...(proposed.has(slot.id) ? ["a plan is proposed"] : []),
    ...there,
  ].join(", ");
}

/** How a class is drawn, the same on the rail and in the lines of a phone. */
export function markData({ slot, tint, standing, chosen, out }: TideMark, shown: SheetShown) {
  const dim = shown.onlyCoach !== null && slot.coach !== shown.onlyCoach;
  return {
    "data-slot": slot.id,
    "data-tide": tint,
    "data-standing": standing,
    "data-chosen": chosen ? "" : undefined,
    "data-out": out ? "" : undefined,
    "data-dim": dim ? "" : undefined,
    "data-lit": shown.lit === slot.id ? "" : undefined,
    "data-moving": shown.moving === slot.id ? "" : undefined,
    "data-changed": shown.changed.has(slot.id) ? "" : undefined,
    "data-proposed": shown.proposed.has(slot.id) ? "" : undefined,
    "data-guest": shown.guests.some((guest) => guest.slot === slot.id) ? "" : undefined,
  };
}

function ClassMark({ mark, shown, hands }: MarkProps) {
  const f = useFormats();
  const { slot, x, width, lane } = mark;
  const two = shown.sheet.rooms.length <= 2;
  return (
    <button
      type="button"
      className={styles.mark}
      {...markData(mark, shown)}
      data-lane={two ? (lane ?? "none") : undefined}
      style={{ left: x, width, ...(two ? {} : { "--lane": String(lane ?? 0) }) } as CSSProperties}
      tabIndex={shown.tabStop === slot.id ? 0 : -1}
      aria-label={markWords(mark, shown)}
      title={shown.changed.get(slot.id)}
      aria-expanded={shown.openSlot === slot.id}
      onClick={() => hands.onOpen(slot.id)}
      onFocus={() => hands.onFocusSlot(slot.id)}
      onPointerDown={(event) => hands.onGrab(event, slot.id)}
      onPointerEnter={() => hands.onPoint(slot.id)}
      onPointerLeave={() => hands.onPoint(null)}
    >
      <span className={styles.block} />
      {shown.moving === slot.id && (
        <span className={styles.toward} data-side={x > TOWARD_PX ? "before" : "after"} aria-hidden="true">
          {shortDayName(slot.date, f)} {dayOfMonth(slot.date)}, {timeWords(slot.start, f)}
        </span>
      )}
    </button>
  );
}

/** Words of the drawing; the mark's own name says them too. */
function Label({ label, shown, hands }: { readonly label: RailLabel } & Omit<MarkProps, "mark">) {
  const { x, parts, inShort, line } = label;
  const style = { left: x, "--line": String(line) } as CSSProperties;
  return (
    <span className={styles.label} style={style} aria-hidden="true">
      {inShort ??
        parts.map((part, i) => (
          <Part key={part.slot} part={part} joined={i > 0} shown={shown} onOpen={() => hands.onOpen(part.slot)} />
        ))}
    </span>
  );
}

interface PartProps {
  readonly part: LabelPart;
  readonly joined: boolean;
  readonly shown: SheetShown;
  readonly onOpen: () => void;
}

function Part({ part, joined, shown, onOpen }: PartProps) {
  const { slot, theme, who, open, chosen } = part;
  return (
    <>
      {joined && PLUS}
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: for a pointer; the class's own button takes the keys */}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: as above */}
      <span
        className={styles.part}
        data-chosen={chosen ? "" : undefined}
        data-lit={shown.lit === slot ? "" : undefined}
        data-changed={shown.changed.has(slot) ? "" : undefined}
        title={shown.changed.get(slot)}
        onClick={onOpen}
      >
        {chosen ? <b>{theme}</b> : theme}
        {who && ` ${who}`}
        {open && (
          <>
            {" "}
            <b className={styles.open}>{open}</b>
          </>
        )}
      </span>
    </>
  );
}
