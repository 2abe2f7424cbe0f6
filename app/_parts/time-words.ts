/** Lengths of classes in words. Pure. */

/** "25 min"; "25:30" when it is not whole minutes. */
export function lengthWords(seconds: number): string {
  const rest = seconds % 60;
  const minutes = Math.floor(seconds / 60);
  return rest === 0 ? `${minutes} min` : `${minutes}:${String(rest).padStart(2, "0")}`;
}
