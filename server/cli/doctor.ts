/** `npm run -s doctor`: is the studio reachable, undamaged and private? One line per check; exit 1 if anything is wrong. */
import { examine } from "#server/doctor/doctor.ts";
import { diagnosisLine } from "#server/doctor/finding.ts";
import { CommandRefused, runCommand } from "./run.ts";

const HELP = `npm run -s doctor

Checks the public address, live connections, the proxy, the clock, the database, the
disk, the secrets, e-mail and the backups, and changes nothing. Run it on the server, under the server's
account and with its settings. It can check the most while the server is running.
The demo's folder: SPRINGLINE_DATA=data-demo npm run -s doctor

One line per check: "ok", "WRONG" with what to do, or "?" where it cannot tell.
Exits with 0 when nothing is wrong, and with 1 otherwise.
`;

await runCommand(async ([word, ...rest]) => {
  if (word === "--help" && rest.length === 0) {
    process.stdout.write(HELP);
    return;
  }
  if (word !== undefined) throw new CommandRefused("The doctor takes no argument but --help: npm run -s doctor");
  const findings = await examine();
  process.stdout.write(`${findings.map(diagnosisLine).join("\n")}\n`);
  if (findings.some(({ is }) => is === "wrong")) process.exitCode = 1;
});
