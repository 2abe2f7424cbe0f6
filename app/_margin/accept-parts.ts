/** Fetched after the page in one go. */
import { AcceptForm } from "./accept-form.tsx";
import { AcceptedFinding } from "./accepted-finding.tsx";
import { AcceptedList } from "./accepted-list.tsx";
import { StandsAgain } from "./stands-again.tsx";

export const ACCEPT_PARTS = { form: AcceptForm, finding: AcceptedFinding, again: StandsAgain, list: AcceptedList };
