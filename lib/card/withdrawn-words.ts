/** A withdrawal in words, the same on every screen. */
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** "Withdrawn by Ines, 29 Nov: the firm spring is being replaced." The date is in the reader's time zone. */
export function withdrawnWords(of: { readonly byName: string; readonly at: number; readonly reason: string }): string {
  const day = new Date(of.at);
  const end = /[.!?]$/.test(of.reason) ? "" : ".";
  return `Withdrawn by ${of.byName}, ${day.getDate()} ${MONTHS[day.getMonth()]}: ${of.reason}${end}`;
}

/** What devices go on with once the newest edition of a plan is withdrawn: nothing. */
export const noneInUseWords = (edition: number): string =>
  `No edition is in use: edition ${edition} is withdrawn, devices do not start it, and no earlier edition takes its place. A new sign-off puts one in use.`;
