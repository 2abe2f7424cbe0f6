/** A sentence about what went wrong, beside the form that has it, and read aloud when it comes. */
export function ProblemLine({ say }: { readonly say: string | null }) {
  return <div role="alert">{say ? <p className="problem">{say}</p> : null}</div>;
}
