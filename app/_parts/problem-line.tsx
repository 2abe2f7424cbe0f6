/** One sentence about what went wrong, beside the form it is about, and read aloud when it appears. */
export function ProblemLine({ say }: { readonly say: string | null }) {
  return <div role="alert">{say ? <p className="problem">{say}</p> : null}</div>;
}
