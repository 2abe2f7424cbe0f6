/** One rule: why, how to mend, where its numbers come from, what this house makes of it, and examples that were run. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { Moment } from "#app/_shell/moment.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import { can } from "#lib/policy/can.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { ruleById } from "#lib/rules/registry.ts";
import type { StudioStandard } from "#lib/rules/studio-standard.ts";
import { readStandard } from "#server/studio/change-standard.ts";
import { isAboutBodies } from "../about-bodies.ts";
import { ruleExamples } from "../examples.ts";
import { Example } from "../excerpt-view.tsx";
import { HouseTable } from "../house-table.tsx";
import styles from "../rules.module.css";
import { SafetyNote } from "../safety-note.tsx";
import { StandardForm } from "../standard-form.tsx";

interface PageProps {
  readonly params: Promise<{ id: string }>;
}

export async function generateMetadata({ params }: PageProps): Promise<Metadata> {
  return { title: ruleById((await params).id)?.title ?? "No such rule" };
}

export default async function RulePage({ params }: PageProps) {
  const { id } = await params;
  const visit = await requirePerson(`/rules/${id}`);
  const { app, who } = visit;
  const rule = ruleById(id);
  const kept = readStandard(app, who.actor, id);
  if (!rule || !kept.ok) notFound();
  const { standard, changed } = kept.value;
  const level = standard?.level ?? rule.level;
  return (
    <Shell visit={visit} section="rules">
      <p>
        <Link className={styles.wayBack} href="/rules">
          All rules
        </Link>
      </p>
      <h1>{rule.title}</h1>
      <p className={styles.weighs}>
        <span className={`${styles.weight} ${level}`}>{LEVEL_WORDS[level]}</span>
        <span className="quiet">
          {standard?.level === undefined
            ? "as the rule has it"
            : `in this house; the rule itself says ${LEVEL_WORDS[rule.level]}`}
        </span>
      </p>
      <div className={styles.columns}>
        <Meaning rule={rule} />
        <section className={styles.house} aria-labelledby="house">
          <h2 id="house">In this house</h2>
          {can(who.actor, "standards.manage") ? (
            <StandardForm ruleId={rule.id} standard={standard} />
          ) : (
            <HouseTable rule={rule} standard={standard} />
          )}
          {changed && (
            <p className="quiet small">
              Last changed by {changed.byName}, <Moment at={changed.at} />. A signed edition keeps the standards it was
              signed with.
            </p>
          )}
        </section>
      </div>
      <Examples rule={rule} standard={standard} />
    </Shell>
  );
}

function Meaning({ rule }: { readonly rule: AnyRule }) {
  return (
    <section className={styles.meaning} aria-label="What it is about">
      <h2>Why it matters</h2>
      <p>{rule.why}</p>
      <h2>How to mend it</h2>
      <p>{rule.fix}</p>
      <h2>Where it comes from</h2>
      <p>{rule.source.charAt(0).toUpperCase() + rule.source.slice(1)}.</p>
      <SafetyNote sentences={SAFETY_NOTE} open={isAboutBodies(rule.id)} />
    </section>
  );
}

function Examples({ rule, standard }: { readonly rule: AnyRule; readonly standard: StudioStandard | null }) {
  const { pass, fail } = ruleExamples(rule, standard);
  return (
    <div className={styles.examples}>
      <p className="quiet small">
        Small classes, run through the rule. What an example does not show is as it should be.
      </p>
      <section aria-labelledby="found">
        <h2 id="found">What it finds</h2>
        {fail.map((example) => (
          <Example key={example.say} {...example} />
        ))}
      </section>
      <section aria-labelledby="fine">
        <h2 id="fine">What it lets pass</h2>
        {pass.map((example) => (
          <Example key={example.say} {...example} />
        ))}
      </section>
    </div>
  );
}
