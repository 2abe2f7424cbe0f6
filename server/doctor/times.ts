/** "2026-11-30 07:30 UTC". */
export const utcMinute = (at: number): string => `${new Date(at).toISOString().slice(0, 16).replace("T", " ")} UTC`;
