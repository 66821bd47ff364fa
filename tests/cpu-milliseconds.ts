/** Processor time since `process.cpuUsage()` gave `start`: what the clock says also counts what others do on the machine. */
export function cpuMilliseconds(start: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}
