/** What each step of a check and each rule takes. Reading the clock costs time too, so the sums exceed a check's own time. */
import type * as Y from "yjs";
import { PlanAnalyst } from "#lib/analysis/analysis.ts";
import type { StudioContext } from "#lib/doc/from-studio.ts";
import { PlanReader } from "#lib/doc/plan-reader.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { RULES } from "#lib/rules/registry.ts";

/** Rules that take at least this many milliseconds on average are listed. */
const WORTH_NAMING = 0.01;

export class Shares {
  private readonly ms = new Map<string, number>();
  private readonly reader: PlanReader;
  private readonly analyst: PlanAnalyst;
  private readonly studio: StudioContext;

  constructor(doc: Y.Doc, studio: StudioContext) {
    this.reader = new PlanReader(doc);
    this.analyst = new PlanAnalyst(RULES.map((rule) => this.timed(rule)));
    this.studio = studio;
  }

  check(): void {
    const { plan } = this.take("reading", () => this.reader.read(this.studio));
    const known = this.take("parts", () => this.analyst.of(plan));
    for (const step of ["clock", "balance", "talk", "track", "classTalk", "findings"] as const)
      this.take(step, () => known[step]);
  }

  forget(): void {
    this.ms.clear();
  }

  show(checks: number): void {
    for (const [what, ms] of [...this.ms].sort((a, b) => b[1] - a[1]))
      if (ms / checks >= WORTH_NAMING) console.log(`  ${(ms / checks).toFixed(3)} ${what}`);
  }

  private take<T>(what: string, act: () => T): T {
    const from = performance.now();
    const value = act();
    this.ms.set(what, (this.ms.get(what) ?? 0) + performance.now() - from);
    return value;
  }

  private timed(rule: AnyRule): AnyRule {
    const within: AnyRule["within"] = (limits) => {
      const { check, limitsRead } = rule.within(limits);
      return { limitsRead, check: (ctx) => this.take(`findings: ${rule.id}`, () => check(ctx)) };
    };
    return { ...rule, within };
  }
}
