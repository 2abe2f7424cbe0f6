/** The mark of the program: two rails with a coil between them. Decoration beside words. */
export function ProgramMark() {
  return (
    <svg width="30" height="24" viewBox="0 0 30 24" aria-hidden="true" fill="none" strokeLinecap="round">
      <path d="M3 2v20M7.5 2v20" stroke="var(--rail)" strokeWidth="2" />
      <path d="M7.5 12h3l1.5-5 3 10 3-10 3 10 1.5-5h4" stroke="var(--ink)" strokeWidth="2" strokeLinejoin="round" />
    </svg>
  );
}
