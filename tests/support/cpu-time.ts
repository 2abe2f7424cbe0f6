/** Processor time, ms, that this process takes for `work`: what else the machine does meanwhile is not in it. */
export function cpuMs(work: () => unknown): number {
  const from = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}
