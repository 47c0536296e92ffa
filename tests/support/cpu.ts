/** What `work` costs this process in CPU time, ms: what else the machine does meanwhile does not count. */
export async function cpuMsOf(work: () => unknown): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e3;
}
