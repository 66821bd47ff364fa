/** The table of medians and ratios; ends with the goals missed and the numbers that differ from R's. */
export function report(tasks, samples, values) {
  const native = samples.some((sample) => sample.native.length > 0);
  const head = ["task", "ours", "R (webr)", "R/ours", ...(native ? ["R (native)", "R/ours"] : []), "goal"];
  const rows = tasks.map((task, i) => {
    const ours = median(samples[i].ours);
    const against = (seconds) =>
      seconds.length === 0 ? ["", ""] : [time(median(seconds)), ratio(median(seconds) / ours)];
    const goal =
      task.goal === undefined ? "" : `${time(task.goal / 1e6)} ${ours * 1e6 <= task.goal ? "met" : "MISSED"}`;
    return [task.name, time(ours), ...against(samples[i].webR), ...(native ? against(samples[i].native) : []), goal];
  });
  return `${table([head, ...rows])}\n${differences(tasks, values)}`;
}

function differences(tasks, values) {
  const different = tasks.filter(({ r, tolerance = 1e-7 }, i) => {
    const { ours, r: theirs } = values[i];
    return r !== undefined && !(Math.abs(ours - theirs) <= tolerance * Math.abs(theirs));
  });
  if (different.length === 0) return "All numbers compared agree with R's.\n";
  process.exitCode = 1;
  return different
    .map((task) => {
      const { ours, r } = values[tasks.indexOf(task)];
      return `DIFFERS from R: ${task.name}: ${ours}, R has ${r}\n`;
    })
    .join("");
}

function median(values) {
  const sorted = values.toSorted((a, b) => a - b);
  return (sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2;
}

function time(seconds) {
  const [unit, size] =
    seconds < 1e-6 ? ["ns", 1e9] : seconds < 1e-3 ? ["us", 1e6] : seconds < 1 ? ["ms", 1e3] : ["s", 1];
  return `${Number((seconds * size).toPrecision(3))} ${unit}`;
}

function ratio(value) {
  return `${Number(value.toPrecision(2))} x`;
}

function table(rows) {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((row) => row[column].length)));
  const line = (row) => row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join("  ");
  return rows.map((row) => line(row).trimEnd()).join("\n");
}
