"use client";
/** A manager says here what one rule weighs in this house and within which limits; what that changes is said first. */
import { useRouter } from "next/navigation";
import { type FormEvent, useState } from "react";
import { Problem } from "#app/_shell/problem.tsx";
import { useSend } from "#app/_shell/use-send.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { limitsOf } from "#lib/rules/limits.ts";
import { ruleById } from "#lib/rules/registry.ts";
import { checkStandard, type StudioStandard } from "#lib/rules/studio-standard.ts";
import type { KeptStandard } from "#server/studio/change-standard.ts";
import { LevelField } from "./level-field.tsx";
import { LimitField } from "./limit-field.tsx";
import styles from "./rules.module.css";
import { draftOf, readStandardDraft, type StandardDraft } from "./standard-draft.ts";
import { TrialWords } from "./trial-words.tsx";

interface FormProps {
  readonly ruleId: string;
  readonly standard: StudioStandard | null;
}

export function StandardForm({ ruleId, standard }: FormProps) {
  const rule = ruleById(ruleId);
  return rule ? <Form rule={rule} standard={standard} /> : null;
}

function Form({ rule, standard }: { readonly rule: AnyRule; readonly standard: StudioStandard | null }) {
  const router = useRouter();
  const sending = useSend();
  const [kept, setKept] = useState(standard);
  const [draft, setDraft] = useState<StandardDraft>(() => draftOf(rule, standard));
  const [done, setDone] = useState("");
  const read = readStandardDraft(rule, draft, kept);
  const url = `/api/standards/${rule.id}`;
  const change = (part: Partial<StandardDraft>) => {
    setDone("");
    sending.clear();
    setDraft({ ...draft, ...part });
  };
  const put = async (wanted: StudioStandard | null, said: string) => {
    const answer = await sending.run<KeptStandard>("PUT", url, { standard: wanted, seen: kept });
    if (!answer) return;
    setKept(answer.standard);
    setDraft(draftOf(rule, answer.standard));
    setDone(said);
    router.refresh();
  };
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    if (!read.standard) return;
    await put(read.standard, "Kept. Open plans were checked again.");
  };
  const reset = async () => {
    if (kept === null) return;
    await put(null, "As the rule has it again. Open plans were checked again.");
  };
  return (
    <form className={styles.form} onSubmit={keep} noValidate>
      <LevelField rule={rule} level={draft.level} onChoose={(level) => change({ level })} />
      {limitsOf(rule).map((limit) => (
        <LimitField
          key={limit.name}
          limit={limit}
          value={draft.values[limit.name]}
          problem={read.problems[limit.name]}
          onChange={(value) => change({ values: { ...draft.values, [limit.name]: value } })}
        />
      ))}
      <TrialWords url={url} standard={differing(rule, read.standard)} kept={kept} />
      <div className={styles.acts}>
        <button
          type="submit"
          className="button button-strong"
          aria-disabled={sending.busy}
          disabled={read.standard === null}
        >
          Keep for this house
        </button>
        <button type="button" className="button" aria-disabled={sending.busy || kept === null} onClick={reset}>
          All as the rule has it
        </button>
      </div>
      <Problem say={sending.problem} />
      <p role="status" className={done ? "done" : undefined}>
        {done}
      </p>
    </form>
  );
}

/** As the server would keep it: only what differs from the rule's own. Null for what it would refuse. */
function differing(rule: AnyRule, typed: StudioStandard | null): StudioStandard | null {
  const checked = typed && checkStandard(rule, typed);
  return checked?.ok ? (checked.standard ?? {}) : null;
}
