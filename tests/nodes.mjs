/**
 * `npm run test:nodes`: the vitest tests on each line of Node that `engines` names, where this machine has it: on PATH, in
 * the folders of nvm, fnm, volta, asdf, mise and n, or in SPRINGLINE_NODES (folders or programs, divided by colons). Says
 * which lines it did not find. better-sqlite3 is compiled for one Node at a time: each run begins with `npm rebuild`.
 */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { homedir } from "node:os";
import { delimiter, dirname, join } from "node:path";

/** As in `engines`: a line of versions and the least of it. */
const { engines } = JSON.parse(readFileSync("package.json", "utf8"));
const LINES = engines.node.split("||").map((range) => range.match(/\d+/g).map(Number));

const home = homedir();
const KEPT_IN = [
  [join(process.env.NVM_DIR ?? join(home, ".nvm"), "versions/node"), "bin/node"],
  [join(process.env.FNM_DIR ?? join(home, ".local/share/fnm"), "node-versions"), "installation/bin/node"],
  [join(process.env.VOLTA_HOME ?? join(home, ".volta"), "tools/image/node"), "bin/node"],
  [join(process.env.ASDF_DATA_DIR ?? join(home, ".asdf"), "installs/nodejs"), "bin/node"],
  [join(process.env.MISE_DATA_DIR ?? join(home, ".local/share/mise"), "installs/node"), "bin/node"],
  [join(process.env.N_PREFIX ?? "/usr/local", "n/versions/node"), "bin/node"],
];

function candidates() {
  const named = (process.env.SPRINGLINE_NODES ?? "").split(delimiter).filter(Boolean);
  const onPath = (process.env.PATH ?? "").split(delimiter).map((folder) => join(folder, "node"));
  const kept = KEPT_IN.flatMap(([folder, program]) =>
    existsSync(folder) ? readdirSync(folder).map((version) => join(folder, version, program)) : [],
  );
  const asPrograms = named.flatMap((path) => [path, join(path, "node"), join(path, "bin/node")]);
  return [process.execPath, ...asPrograms, ...onPath, ...kept].filter(
    (path) => statSync(path, { throwIfNoEntry: false })?.isFile() === true,
  );
}

function versionOf(program) {
  const { status, stdout } = spawnSync(program, ["--version"], { encoding: "utf8" });
  return status === 0 ? stdout.trim().slice(1).split(".").map(Number) : undefined;
}

const isOf = ([major = 0, minor = 0], version) => version !== undefined && version[0] === major && version[1] >= minor;

const found = candidates().map((program) => ({ program, version: versionOf(program) }));
const chosen = LINES.map((line) => ({ line, node: found.find(({ version }) => isOf(line, version)) }));

/** With that Node first on PATH, for everything that is started by name. */
const withNode = (program) => ({
  ...process.env,
  ...headersOf(program),
  PATH: `${dirname(program)}${delimiter}${process.env.PATH ?? ""}`,
});

/** Those that came with it, where they did: else they are fetched, for which a machine needs the network. */
function headersOf(program) {
  const prefix = dirname(dirname(program));
  return existsSync(join(prefix, "include/node/node.h")) ? { npm_config_nodedir: prefix } : {};
}
const npm = (env) => spawnSync("npm", ["rebuild", "better-sqlite3"], { env, stdio: "inherit" }).status === 0;
/** A rebuild may leave the module of another Node where it was, for want of headers, and call that a success. */
const isCompiledFor = (program) =>
  spawnSync(program, ["-e", "require('better-sqlite3')(':memory:')"], { stdio: "ignore" }).status === 0;

const said = [];
let held = true;
for (const { line, node } of chosen) {
  if (!node) {
    said.push(`Node ${line[0]}: not found on this machine, not run`);
    continue;
  }
  const version = node.version.join(".");
  console.log(`\n== Node ${version} (${node.program})`);
  const env = withNode(node.program);
  if (!npm(env) || !isCompiledFor(node.program)) {
    said.push(`Node ${version}: the database module could not be compiled for it, not run`);
    held = false;
    continue;
  }
  const fine =
    spawnSync(node.program, ["node_modules/vitest/vitest.mjs", "run"], { env, stdio: "inherit" }).status === 0;
  said.push(`Node ${version}: ${fine ? "passed" : "failed"}`);
  held &&= fine;
}
// What was there before is put back for the Node that runs this.
if (chosen.filter(({ node }) => node && node.program !== process.execPath).length > 0) npm(process.env);
console.log(`\n${said.join("\n")}`);
process.exit(held ? 0 : 1);
