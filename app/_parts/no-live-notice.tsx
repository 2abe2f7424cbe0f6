/** The page loads but its socket never opens: what that means and what the owner should do. */
interface NoLiveNoticeProps {
  readonly sentence: string | null;
}

export function NoLiveNotice({ sentence }: NoLiveNoticeProps) {
  if (sentence === null) return null;
  return (
    <p className="problem" role="alert">
      {sentence}
    </p>
  );
}
