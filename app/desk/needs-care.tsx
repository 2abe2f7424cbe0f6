/** For a manager, only when something about the server is wrong: what, and the way to its page. */
export function NeedsCare({ what }: { readonly what: string | null }) {
  if (what === null) return null;
  return (
    <p className="problem">
      The server needs care: {what}. <a href="/studio/health">See what to do under Health</a>
    </p>
  );
}
