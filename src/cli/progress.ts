/** Prints one line on standard error once a job has taken over half a second, and again every two seconds. */
export function progress(job: string, now: () => number = () => performance.now()): (step: string) => void {
  const start = now();
  let said = 0;
  return (step) => {
    const spent = now() - start;
    if (spent < 500 || (said > 0 && spent - said < 2000)) return;
    said = spent;
    process.stderr.write(`${job}: ${step}\n`);
  };
}
