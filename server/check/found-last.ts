/** What the last check of each plan found, in memory: a page that opens the same plan then need not check it first. */
import type { Finding } from "#lib/rules/define/types.ts";
import type { CheckAnswer } from "#server/context/checks.ts";

type Checked = Pick<CheckAnswer, "planId" | "generation" | "seq" | "studioMark">;

/** Plans, the most recently checked. */
const MOST_PLANS = 100;

export class FoundLast {
  private readonly plans = new Map<string, Checked & { readonly findings: readonly Finding[] }>();

  keep({ planId, generation, seq, studioMark, findings }: CheckAnswer): void {
    this.plans.delete(planId);
    if (!findings) return;
    this.plans.set(planId, { planId, generation, seq, studioMark, findings });
    const [oldest] = this.plans.keys();
    if (this.plans.size > MOST_PLANS && oldest !== undefined) this.plans.delete(oldest);
  }

  /** Undefined unless it is of this very check. */
  of(check: Checked | undefined): readonly Finding[] | undefined {
    const last = check && this.plans.get(check.planId);
    const { generation, seq, studioMark } = check ?? {};
    const isSame = last?.generation === generation && last?.seq === seq && last?.studioMark === studioMark;
    return isSame ? last?.findings : undefined;
  }
}
