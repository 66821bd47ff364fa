import { spawnSync } from "node:child_process";

/** R that times one call in a batch of at least 50 ms and gives seconds and value. */
function timing({ r, rSetup = "" }) {
  return `local({
    ${rSetup}
    bench_call <- function() { ${r} }
    bench_n <- 1
    repeat {
      bench_start <- Sys.time()
      for (bench_i in seq_len(bench_n)) bench_value <- bench_call()
      bench_took <- as.numeric(Sys.time() - bench_start, units = "secs")
      if (bench_took > 0.05) break
      bench_n <- ceiling(bench_n * min(10, 0.07 / max(bench_took, 1e-4))) + 1
    }
    c(bench_took / bench_n, as.numeric(bench_value)[1])
  })`;
}

export async function inWebR(webR, task) {
  const result = await webR.evalR(timing(task));
  const [seconds, value] = await result.toTypedArray();
  await webR.destroy(result);
  return { seconds, value };
}

export function hasNativeR() {
  return spawnSync("Rscript", ["--version"]).status === 0;
}

export function inNativeR(task) {
  const code = `cat(sprintf("%.17g", ${timing(task)}))`;
  const { status, stdout, stderr } = spawnSync("Rscript", ["--vanilla", "-e", code], { encoding: "utf8" });
  if (status !== 0) throw new Error(`bench: R failed on "${task.name}": ${stderr}`);
  const [seconds, value] = stdout.trim().split(/\s+/).map(Number);
  return { seconds, value };
}
