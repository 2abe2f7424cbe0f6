/** One rule: why, how to fix what it finds, where its numbers come from, how this studio uses it, and examples that were run. */
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { LocalTime } from "#app/_parts/local-time.tsx";
import { requirePerson } from "#app/_shell/person.ts";
import { Shell } from "#app/_shell/shell.tsx";
import { SAFETY_NOTE } from "#lib/card/cautions.ts";
import type { Formats } from "#lib/formats/formats.ts";
import { can } from "#lib/policy/can.ts";
import type { AnyRule } from "#lib/rules/define/types.ts";
import { LEVEL_WORDS } from "#lib/rules/level-words.ts";
import { ruleById } from "#lib/rules/registry.ts";
import type { StudioStandard } from "#lib/rules/studio-standard.ts";
import { type KeptStandard, readStandard } from "#server/studio/change-standard.ts";
import { SafetyNote } from "../../_parts/safety-note.tsx";
import { isAboutBodies } from "../about-bodies.ts";
import { ruleExamples } from "../examples.ts";
import { Example } from "../excerpt-view.tsx";
import styles from "../rules.module.css";
import { StandardForm } from "../standard-form.tsx";
import { StudioLimits } from "../studio-limits.tsx";

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
  const { standard } = kept.value;
  const level = standard?.level ?? rule.level;
  return (
    <Shell visit={visit} section="rules">
      <p>
        <Link className="link-line" href="/rules">
          All rules
        </Link>
      </p>
      <h1>{rule.title}</h1>
      <p className={styles.weighs}>
        <span className={`${styles.weight} ${level}`}>{LEVEL_WORDS[level]}</span>
        <span className="quiet">
          {standard?.level === undefined ? "the usual level" : `in your studio; usually ${LEVEL_WORDS[rule.level]}`}
        </span>
      </p>
      <div className={styles.columns}>
        <Meaning rule={rule} />
        <InThisStudio
          rule={rule}
          kept={kept.value}
          formats={visit.formats}
          mayChange={can(who.actor, "standards.manage")}
        />
      </div>
      <Examples rule={rule} standard={standard} />
    </Shell>
  );
}

interface InThisStudioProps {
  readonly rule: AnyRule;
  readonly kept: KeptStandard;
  readonly mayChange: boolean;
  readonly formats: Formats;
}

function InThisStudio({ rule, kept: { standard, changed }, mayChange, formats }: InThisStudioProps) {
  return (
    <section className={styles.studio} aria-labelledby="in-this-studio">
      <h2 id="in-this-studio">In your studio</h2>
      {mayChange ? (
        <StandardForm ruleId={rule.id} standard={standard} />
      ) : (
        <StudioLimits rule={rule} standard={standard} formats={formats} />
      )}
      {changed && (
        <p className="quiet small">
          Last changed by {changed.byName}, <LocalTime at={changed.at} />. A signed edition keeps the standards it was
          signed with.
        </p>
      )}
    </section>
  );
}

function Meaning({ rule }: { readonly rule: AnyRule }) {
  return (
    <section className={styles.meaning} aria-label="About the rule">
      <h2>Why it matters</h2>
      <p>{rule.why}</p>
      <h2>How to fix it</h2>
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
      <p className="quiet small">Small classes, checked by this rule. Whatever an example does not show is in order.</p>
      <section aria-labelledby="found">
        <h2 id="found">What it finds</h2>
        {fail.map((example) => (
          <Example key={example.say} {...example} />
        ))}
      </section>
      <section aria-labelledby="fine">
        <h2 id="fine">What it accepts</h2>
        {pass.map((example) => (
          <Example key={example.say} {...example} />
        ))}
      </section>
    </div>
  );
}
