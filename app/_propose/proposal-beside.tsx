"use client";
import { useMemo, useState } from "react";
import { useFormats } from "#app/_parts/formats.tsx";
import { ProblemLine } from "#app/_parts/problem-line.tsx";
import type { PlanSession } from "#app/_session/session.ts";
import { tellLine } from "#app/_session/typed/told-notices.tsx";
import { useSnapshot } from "#app/_session/use-session.ts";
import { lineIdsOf } from "#lib/doc/take-proposal.ts";
import { momentWords } from "#lib/formats/dates.ts";
/** One proposal beside the plate as it is: its parts with boxes to tick, its effect, and what can be done with it. */
import { offsetsIn } from "#lib/formats/units.ts";
import { applied, fits, type JudgedPart } from "#lib/proposal/fits.ts";
import { partName } from "#lib/proposal/part-words.ts";
import type { ProposalView as Proposal } from "#lib/protocol/messages.ts";
import { DeclineForm } from "./decline-form.tsx";
import { EffectTable } from "./effect-table.tsx";
import { focusNear } from "./focus-near.ts";
import { PartShown } from "./part-shown.tsx";
import { useProposalEffect } from "./proposal-effect.ts";
import styles from "./propose.module.css";
import { TAKE } from "./propose-words.ts";
import { postWithdraw, takeParts } from "./take.ts";

interface ProposalBesideProps {
  readonly session: PlanSession;
  readonly proposal: Proposal;
}

export function ProposalBeside({ session, proposal }: ProposalBesideProps) {
  const snap = useSnapshot(session);
  const f = useFormats();
  const { plan } = snap;
  const [unticked, setUnticked] = useState<ReadonlySet<string>>(new Set());
  // biome-ignore lint/correctness/useExhaustiveDependencies: the plan is new whenever the document has changed
  const ids = useMemo(() => lineIdsOf(session.doc, proposal.parts), [session, proposal, plan]);
  const judged = useMemo(() => fits(plan, proposal.parts, ids), [plan, proposal, ids]);
  const fitting = judged.filter(({ state }) => state === "fits");
  const ticked = fitting.filter(({ part }) => !unticked.has(part.id));
  const chosen = ticked.map(({ part }) => part.id).join(" ");
  const after = useMemo(() => {
    const parts = proposal.parts.filter(({ id }) => chosen.split(" ").includes(id));
    return applied(plan, parts, ids);
  }, [plan, proposal, ids, chosen]);
  const effect = useProposalEffect(plan, after, proposal.itemId);
  const tick = (id: string, on: boolean) => {
    const next = new Set(unticked);
    if (on) next.delete(id);
    else next.add(id);
    setUnticked(next);
  };
  return (
    <section className={styles.proposal} aria-label={TAKE.label(proposal.byName)} data-proposal={proposal.id}>
      <header className={styles.head}>
        <h3>{TAKE.heading(proposal.byName)}</h3>
        <time dateTime={new Date(proposal.at).toISOString()}>{momentWords(proposal.at, f)}</time>
      </header>
      {proposal.note && <p className={styles.note}>{proposal.note}</p>}
      <ul className={styles.parts}>
        {judged.map((one) => (
          <Part key={one.part.id} {...{ session, one }} ticked={!unticked.has(one.part.id)} onTick={tick} />
        ))}
      </ul>
      {fitting.length === 0 && <p className="problem">{TAKE.nothingFits}</p>}
      <Acts {...{ session, proposal, judged }} ticked={ticked.map(({ part }) => part.id)} />
      {effect && <EffectTable effect={effect} />}
    </section>
  );
}

interface PartProps {
  readonly session: PlanSession;
  readonly one: JudgedPart;
  readonly ticked: boolean;
  readonly onTick: (id: string, on: boolean) => void;
}

function Part({ session, one, ticked, onTick }: PartProps) {
  const { plan } = useSnapshot(session);
  const { part, state, why } = one;
  const name = partName(plan, part);
  return (
    <li data-state={state}>
      {session.canWrite && state === "fits" ? (
        <label className="check">
          <input type="checkbox" checked={ticked} onChange={(event) => onTick(part.id, event.target.checked)} />
          {name}
        </label>
      ) : (
        <p className={styles.partName}>{name}</p>
      )}
      <PartShown plan={plan} one={one} />
      {why !== null && <p className={styles.why}>{offsetsIn(why, session.formats)}</p>}
    </li>
  );
}

interface ActsProps extends ProposalBesideProps {
  readonly judged: readonly JudgedPart[];
  readonly ticked: readonly string[];
}

function Acts({ session, proposal, judged, ticked }: ActsProps) {
  const { rights } = useSnapshot(session);
  const [declining, setDeclining] = useState(false);
  const { busy, problem, run } = useTaking(session, proposal);
  const fitting = judged.filter(({ state }) => state === "fits").map(({ part }) => part.id);
  const all = fitting.length === judged.length ? TAKE.all : TAKE.allThatFits;
  const mine = proposal.byId === session.me.id;
  if (declining) return <DeclineForm session={session} proposal={proposal} onLeave={() => setDeclining(false)} />;
  return (
    <>
      <ProblemLine say={problem} />
      {!rights.writes && !mine && <p className="quiet small">{TAKE.readOnly}</p>}
      <div className="acts">
        {rights.writes && fitting.length > 0 && (
          <button type="button" className="button button-strong" aria-disabled={busy} onClick={() => run(fitting)}>
            {all}
          </button>
        )}
        {rights.writes && fitting.length > 1 && (
          <button
            type="button"
            className="button"
            aria-disabled={busy}
            disabled={ticked.length === 0}
            onClick={() => run(ticked)}
          >
            {TAKE.ticked}
          </button>
        )}
        {rights.writes && (
          <button type="button" className="button" onClick={() => setDeclining(true)}>
            {TAKE.decline}
          </button>
        )}
        {mine && <Withdraw session={session} proposal={proposal} />}
      </div>
    </>
  );
}

/** One request at a time; a second press meanwhile is ignored. */
function useTaking(session: PlanSession, proposal: Proposal) {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  async function run(parts: readonly string[]) {
    if (busy || parts.length === 0) return;
    setBusy(true);
    setProblem(null);
    const done = await takeParts(session, proposal, new Set(parts));
    setBusy(false);
    if (done.ok) focusNear();
    else setProblem(done.message);
  }
  return { busy, problem, run };
}

/** Somebody may take it in the same second: this goes from the page then, so the refusal is told on the page itself. */
function Withdraw({ session, proposal }: ProposalBesideProps) {
  const [problem, setProblem] = useState<string | null>(null);
  async function withdraw() {
    const sent = await postWithdraw(proposal.id);
    if (sent.ok) session.say(TAKE.withdrawn);
    else if (sent.status === 409)
      tellLine(session, { id: `withdraw-${proposal.id}-${sent.code}`, sentence: sent.message });
    else return setProblem(sent.message);
    focusNear();
  }
  return (
    <>
      <button type="button" className="button" onClick={withdraw}>
        {TAKE.withdraw}
      </button>
      <ProblemLine say={problem} />
    </>
  );
}
