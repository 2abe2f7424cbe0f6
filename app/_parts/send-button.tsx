/** The button of a form that is sent: says what it is doing while the server is asked, and keeps the keyboard's focus. */

interface SendButtonProps {
  readonly busy: boolean;
  /** What it says meanwhile: "Signing in…". */
  readonly doing: string;
  readonly disabled?: boolean;
  readonly children: string;
}

export function SendButton({ busy, doing, disabled = false, children }: SendButtonProps) {
  return (
    <button type="submit" className="button button-strong" aria-disabled={busy} disabled={disabled}>
      {busy ? doing : children}
    </button>
  );
}
