/** Before the first browser test: the invented studio, seeded once. Every server of the tests begins with a copy of it. */
import { seedOnce } from "./app.ts";

export default seedOnce;
