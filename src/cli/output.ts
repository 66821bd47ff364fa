import { toJson } from "../report/json.js";

/** Prints a result: with `--json` the object and nothing else, otherwise the text for people. */
export function present(result: object, options: { readonly json?: boolean }, text: () => string): void {
  const out = options.json ? toJson(result) : text();
  process.stdout.write(out.endsWith("\n") ? out : `${out}\n`);
}
