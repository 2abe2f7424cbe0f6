"use client";
import { ChoiceField, SelectField } from "#app/_parts/choice.tsx";
/** Time, side, springs and set-up of the copy of a plate. */
import { LengthField } from "#app/_parts/length-field.tsx";
import { NumberField } from "#app/_parts/number-field.tsx";
import panel from "#app/_parts/panel.module.css";
import { SpringStepper } from "#app/_parts/spring-stepper.tsx";
import { sidesOf } from "#app/_session/acts.ts";
import { FACING_WORDS } from "#app/_session/item-words.ts";
import { plainNumber, sideWords } from "#lib/plan/format.ts";
import { headSeconds, moveOf } from "#lib/plan/lookup.ts";
import { FACINGS, type MoveItem, type Pause, type Plan } from "#lib/plan/schema.ts";
import { steppedSeconds } from "#lib/rail/drag.ts";

interface CopyNumbersProps<I extends MoveItem | Pause = MoveItem | Pause> {
  readonly plan: Plan;
  readonly item: I;
  readonly onChange: (item: I) => void;
}

export function CopyNumbers({ plan, item, onChange }: CopyNumbersProps) {
  return (
    <>
      <Time {...{ plan, item, onChange }} />
      {item.kind === "move" && <MoveNumbers {...{ plan, item, onChange }} />}
    </>
  );
}

const MOST_SECONDS = 14400;

function Time({ plan, item, onChange }: CopyNumbersProps) {
  const grid = headSeconds(plan, "gridSeconds");
  const least = item.kind === "pause" ? 0 : 1;
  const set = (seconds: number | undefined) => {
    if (seconds === undefined || !Number.isFinite(seconds)) return;
    onChange({ ...item, seconds: Math.min(MOST_SECONDS, Math.max(least, Math.round(seconds * 10) / 10)) });
  };
  const step = (by: 1 | -1) => (
    <button
      type="button"
      className="square-button"
      aria-label={`${plainNumber(grid)} seconds ${by === 1 ? "more" : "less"}`}
      onClick={() => set(steppedSeconds(item.seconds, by, grid))}
    >
      {by === 1 ? "+" : "−"}
    </button>
  );
  return (
    <div className={panel.stepper}>
      {step(-1)}
      <NumberField label="Seconds" value={item.seconds} min={least} max={MOST_SECONDS} onCommit={set} />
      {step(1)}
    </div>
  );
}

function MoveNumbers({ plan, item, onChange }: CopyNumbersProps<MoveItem>) {
  const sides = sidesOf(moveOf(plan, item));
  const options = sides.includes(item.side) ? sides : [item.side, ...sides];
  const setSpring = (id: string, count: number) => {
    const { [id]: _, ...rest } = item.springs;
    onChange({ ...item, springs: count > 0 ? { ...rest, [id]: count } : rest });
  };
  return (
    <>
      {options.length > 1 && (
        <ChoiceField
          label="Side"
          value={item.side}
          options={options.map((side) => ({ value: side, label: sideWords(side) }))}
          onChoose={(side) => onChange({ ...item, side })}
        />
      )}
      <fieldset className={panel.springs}>
        <legend>Springs</legend>
        {plan.equipment.springs.map((spring) => (
          <SpringStepper
            key={spring.id}
            {...{ spring }}
            equipment={plan.equipment}
            on={item.springs[spring.id] ?? 0}
            onSet={(count) => setSpring(spring.id, count)}
          />
        ))}
      </fieldset>
      <SetUp {...{ plan, item, onChange }} />
    </>
  );
}

function SetUp({ plan, item, onChange }: CopyNumbersProps<MoveItem>) {
  const usual = moveOf(plan, item)?.facing;
  const own = { value: "usual" as const, label: usual ? `as the move: ${FACING_WORDS[usual]}` : "as the move" };
  const set = <F extends "facing" | "offsetMm" | "transitionSeconds">(field: F, value: MoveItem[F] | undefined) => {
    const next: MoveItem = { ...item };
    if (value === undefined) delete next[field];
    else next[field] = value;
    onChange(next);
  };
  return (
    <div className={panel.pairOfFields}>
      <SelectField
        label="Facing"
        value={item.facing ?? "usual"}
        options={[own, ...FACINGS.map((value) => ({ value, label: FACING_WORDS[value] }))]}
        onChoose={(facing) => set("facing", facing === "usual" ? undefined : facing)}
      />
      <LengthField
        label="Starting place"
        value={item.offsetMm}
        min={-2000}
        max={2000}
        optional
        placeholder="0"
        onCommit={(offset) => set("offsetMm", offset)}
      />
      <NumberField
        label="Planned change"
        unit="s"
        value={item.transitionSeconds}
        min={0}
        max={MOST_SECONDS}
        optional
        placeholder="as estimated"
        onCommit={(seconds) => set("transitionSeconds", seconds)}
      />
    </div>
  );
}
