"use client";
/** Where a manager sets the level and the limits of one rule of the month. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import { SendButton } from "#app/_parts/send-button.tsx";
import { useSend } from "#app/_parts/use-send.ts";
import { monthRuleById } from "#lib/month/check/registry.ts";
import type { AnyMonthRule } from "#lib/month/define/define-month-rule.ts";
import { sameData } from "#lib/plan/same-data.ts";
import { limitsOf } from "#lib/rules/limits.ts";
import type { MonthSettings } from "#server/month-facts/month-settings.ts";
import { GroupLimits } from "./group-limits.tsx";
import { LevelField } from "./level-field.tsx";
import { LimitField } from "./limit-field.tsx";
import { groupLimitsOf, type MonthRuleDraft, monthRuleDraftOf, readMonthRuleDraft } from "./month-rule-draft.ts";
import styles from "./rules.module.css";
import { NOTHING_CHANGED } from "./standard-draft.ts";

interface FormProps {
  readonly ruleId: string;
  readonly settings: MonthSettings;
}

export function MonthRuleForm({ ruleId, settings }: FormProps) {
  const state = useMonthRule(ruleId, settings);
  const { draft, read, done, sending, change, save } = state;
  const rule = monthRuleById(ruleId);
  if (!rule) return null;
  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <LevelField rule={rule} of="months" level={draft.level} onChoose={(level) => change({ level })} />
      <Limits rule={rule} {...state} />
      <div className="acts">
        <SendButton busy={sending.busy} doing="Saving…" disabled={read.settings === null}>
          Save for your studio
        </SendButton>
      </div>
      <ProblemLine say={sending.problem} />
      <p role="status" className={done ? "done" : undefined}>
        {done}
      </p>
    </form>
  );
}

type LimitsProps = Pick<ReturnType<typeof useMonthRule>, "draft" | "read" | "change"> & { readonly rule: AnyMonthRule };

function Limits({ rule, draft, read, change }: LimitsProps) {
  return (
    <>
      {limitsOf(rule).map((limit) =>
        limit.kind === "other" ? null : (
          <LimitField
            key={limit.name}
            limit={limit}
            value={draft.values[limit.name]}
            units={draft.units}
            problem={read.problems[limit.name]}
            onChange={(value) => change({ values: { ...draft.values, [limit.name]: value } })}
          />
        ),
      )}
      {groupLimitsOf(rule).map(({ name, label }) => (
        <GroupLimits
          key={name}
          limit={name}
          label={label}
          texts={draft.byGroup[name] ?? {}}
          problems={read.problems}
          onChange={(texts) => change({ byGroup: { ...draft.byGroup, [name]: texts } })}
        />
      ))}
    </>
  );
}

function useMonthRule(ruleId: string, settings: MonthSettings) {
  const router = useRouter();
  const f = useFormats();
  const sending = useSend();
  const [seen, setSeen] = useState(settings);
  const [draft, setDraft] = useState(() => monthRuleDraftOf(ruleId, settings, f));
  const [done, setDone] = useState("");
  const read = readMonthRuleDraft(ruleId, draft, seen);
  const change = (part: Partial<MonthRuleDraft>) => {
    setDone("");
    sending.clear();
    setDraft({ ...draft, ...part });
  };
  const save = async (event: FormEvent) => {
    event.preventDefault();
    if (!read.settings) return;
    if (sameData(read.settings, seen)) return setDone(NOTHING_CHANGED);
    const answer = await sending.run<MonthSettings>("PUT", "/api/studio/month", { settings: read.settings, seen });
    if (!answer) return;
    setSeen(answer);
    setDraft(monthRuleDraftOf(ruleId, answer, f));
    setDone("Saved. Months that are open take it when they are loaded again.");
    router.refresh();
  };
  return { draft, read, done, sending, change, save };
}
