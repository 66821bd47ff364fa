// `npm start`: installs what is missing, builds the notebooks and serves them on this computer.
import { complain, installWhenMissing, projectRoot, run, say } from "./installed.mjs";
import { serve } from "./serve.mjs";

const wanted = Number(process.env.PORT ?? 8347);
if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65535) {
  complain(`PORT must be a number from 0 to 65535, got ${process.env.PORT}`);
  process.exit(2);
}
installWhenMissing();
say("Building the notebooks …");
const status = run(process.execPath, ["notebooks/build/build-pages.mjs", "--served-only"]);
if (status !== 0) {
  complain("The notebooks could not be built; see the message above.");
  process.exit(status);
}

const { port, close } = await serve(`${projectRoot}dist/pages`, {
  port: wanted,
  home: "/case-series/",
  taken: (taken, next) => say(`Port ${taken} is taken; trying ${next}.`),
});
say(`\nDenominator is at http://localhost:${port}/  (on this computer only; stop it with Ctrl+C)`);
for (const signal of ["SIGINT", "SIGTERM"]) process.once(signal, () => void close().then(() => process.exit(0)));
