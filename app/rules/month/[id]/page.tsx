/** One rule of the month: why, how to fix what it finds, where its numbers come from, and how this studio uses it. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { monthRuleById } from "#lib/month/check/registry.ts";
import type { AnyMonthRule } from "#lib/month/define/define-month-rule.ts";
import { own } from "#lib/plan/lookup.ts";
import { can } from "#lib/policy/can.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { type MonthSettings, readMonthSettings } from "#server/month-facts/month-settings.ts";
import { SafetyNote } from "../../../_parts/safety-note.tsx";
import { MonthRuleForm } from "../../month-rule-form.tsx";
import styles from "../../rules.module.css";
import { StudioLimits } from "../../studio-limits.tsx";

interface PageProps {
  readonly params: Promise<{ id: string }>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  return { title: monthRuleById((await params).id)?.title ?? "No such rule" };
}

export default async function MonthRulePage({ params }: PageProps) {
  const { id } = await params;
  const visit = await requirePerson(`/rules/month/${id}`);
  const { app, who } = visit;
  const rule = monthRuleById(id);
  const settings = readMonthSettings(app, who.actor);
  if (!rule || !settings.ok) notFound();
  const set = own(settings.value.standards, id)?.level;
  const level = set ?? rule.level;
  return (
    <Shell visit={visit} section="rules">
      <p>
        <Link className="link-line" href="/rules#month">
          All rules
        </Link>
      </p>
      <h1>{rule.title}</h1>
      <p className={styles.weighs}>
        <span className={`${styles.weight} ${level}`}>{LEVEL_WORDS[level]}</span>
        <span className="quiet">
          {set === undefined ? "the usual level" : `in your studio; usually ${LEVEL_WORDS[rule.level]}`}
        </span>
      </p>
      <div className={styles.columns}>
        <Meaning rule={rule} />
        <InThisStudio
          rule={rule}
          settings={settings.value}
          formats={visit.formats}
          mayChange={can(who.actor, "month.manage")}
        />
      </div>
    </Shell>
  );
}

/** What a month asks of a body is general guidance: nothing here knows a person. */
function Meaning({ rule }: { readonly rule: AnyMonthRule }) {
  const aboutBodies = rule.of === "regulars";
  return (
    <section className={styles.meaning} aria-label="About the rule">
      <h2>Why it matters</h2>
      <p>{rule.why}</p>
      <h2>How to fix it</h2>
      <p>{rule.fix}</p>
      <h2>Where it comes from</h2>
      <p>{rule.source.charAt(0).toUpperCase() + rule.source.slice(1)}.</p>
      {aboutBodies && <p>It is general guidance for groups, set by the studio, and no advice to a person.</p>}
      <SafetyNote sentences={SAFETY_NOTE} open={aboutBodies} />
    </section>
  );
}

interface InThisStudioProps {
  readonly rule: AnyMonthRule;
  readonly settings: MonthSettings;
  readonly mayChange: boolean;
  readonly formats: Formats;
}

function InThisStudio({ rule, settings, mayChange, formats }: InThisStudioProps) {
  return (
    <section className={styles.studio} aria-labelledby="in-this-studio">
      <h2 id="in-this-studio">In your studio</h2>
      {mayChange ? (
        <MonthRuleForm ruleId={rule.id} settings={settings} />
      ) : (
        <StudioLimits rule={rule} standard={{ limits: settings.limits }} formats={formats} />
      )}
      <p className="quiet small">A signed month keeps the limits that it was signed with.</p>
    </section>
  );
}
