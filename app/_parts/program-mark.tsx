/** The mark of the program: two rails from above, a coil between them, and the carriage that it pulls. Decoration beside words. */
export function ProgramMark() {
  return (
    <svg
      width="30"
      height="24"
      viewBox="0 0 30 24"
      aria-hidden="true"
      fill="none"
      strokeLinecap="round"
      strokeLinejoin="round"
    >
      <path d="M1 3h28M1 21h28" stroke="var(--rail)" strokeWidth="2" />
      <path d={COIL} stroke="var(--ink)" strokeWidth="1.7" />
      <rect x="20" y="1.5" width="7" height="21" rx="1.5" fill="var(--ink)" />
    </svg>
  );
}

const COIL =
  "M1 12H3C2.5 9.2 4 6.6 5.7 6.6C7.4 6.6 9 9.2 9.4 12C9.7 14.8 8.9 17.4 8 17.4C7.1 17.4 6.3 14.8 6.7 12C7 9.2 8.6 6.6 10.3 6.6C12 6.6 13.6 9.2 14 12C14.3 14.8 13.5 17.4 12.6 17.4C11.7 17.4 10.9 14.8 11.3 12C11.6 9.2 13.2 6.6 14.9 6.6C16.6 6.6 18.2 9.2 18.5 12H20";
