// Times the tasks of tests/bench/tasks against R, interleaved in one run, so that a busy machine slows both: prints the
// medians and their ratio, which holds better than either. R runs in the process (webr); also native where it is installed.
import { readdirSync, rmSync } from "node:fs";
import { basename } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "vite";
import { WebR } from "webr";
import { hasNativeR, inNativeR, inWebR } from "./time-r.mjs";
import { perCall } from "./time-ours.mjs";
import { report } from "./report.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));
const out = `${root}dist/bench`;
const rounds = 7;

const words = process.argv.slice(2).filter((word) => !word.startsWith("-"));
const tasks = (await loadTasks()).filter(({ name }) =>
  words.every((word) => name.toLowerCase().includes(word.toLowerCase())),
);
if (tasks.length === 0) throw new Error(`bench: no task is named ${words.join(" ")}`);

const webR = new WebR({ interactive: false });
await webR.init();
const native = hasNativeR();
const samples = tasks.map(() => ({ ours: [], webR: [], native: [] }));
const values = tasks.map(() => ({}));
for (let round = 0; round < rounds; round++)
  for (const [i, task] of tasks.entries()) {
    const ours = perCall(task.ours);
    samples[i].ours.push(ours.seconds);
    values[i].ours = ours.value;
    if (task.r === undefined) continue;
    const theirs = await inWebR(webR, task);
    samples[i].webR.push(theirs.seconds);
    values[i].r = theirs.value;
    if (native) samples[i].native.push(inNativeR(task).seconds);
    progress(`${round + 1}/${rounds} ${task.name}`);
  }
progress("");
webR.close();
process.stdout.write(report(tasks, samples, values));
rmSync(out, { recursive: true, force: true });

function progress(text) {
  if (process.stderr.isTTY) process.stderr.write(`\r${text.padEnd(78)}\r`);
}

/** The task files, bundled as the library is. */
async function loadTasks() {
  const names = readdirSync(`${root}tests/bench/tasks`).map((file) => basename(file, ".ts"));
  await build({
    configFile: false,
    root,
    logLevel: "warn",
    publicDir: false,
    build: {
      ssr: true,
      outDir: out,
      emptyOutDir: true,
      minify: false,
      target: "node20",
      rolldownOptions: {
        input: Object.fromEntries(names.map((name) => [name, `${root}tests/bench/tasks/${name}.ts`])),
      },
    },
  });
  const modules = await Promise.all(names.map((name) => import(pathToFileURL(`${out}/${name}.js`).href)));
  return modules.flatMap((module) => module.tasks);
}
