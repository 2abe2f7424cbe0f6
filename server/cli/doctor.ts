/** `npm run -s doctor`: is the studio reachable, whole and private? One line a check; exit 1 when one found something wrong. */
import { examine } from "#server/doctor/doctor.ts";
import { diagnosisLine } from "#server/doctor/finding.ts";
import { CommandRefused, runCommand } from "./run.ts";

const HELP = `npm run -s doctor

Looks at the public address, live connections, the proxy, the clock, the database, the
disk and the secrets, and changes nothing. Run it on the server, as its account, with
the settings it was started with; while the server runs it sees the most.

One line a check: "ok", "WRONG" with what to do, or "?" where it could not be told.
Ends with 0 when nothing is wrong, else with 1.
`;

await runCommand(async ([word, ...rest]) => {
  if (word === "--help" && rest.length === 0) {
    process.stdout.write(HELP);
    return;
  }
  if (word !== undefined) throw new CommandRefused("It takes nothing but --help: npm run -s doctor");
  const findings = await examine();
  process.stdout.write(`${findings.map(diagnosisLine).join("\n")}\n`);
  if (findings.some(({ is }) => is === "wrong")) process.exitCode = 1;
});
