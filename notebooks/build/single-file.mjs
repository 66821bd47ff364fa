import { createHash } from "node:crypto";
import { policy } from "./policy.mjs";

const hashOf = (text) => `'sha256-${createHash("sha256").update(text, "utf8").digest("base64")}'`;

/**
 * Puts script and style of a page into its HTML, with a policy that allows exactly those two by their hashes.
 * @param {string} name of the file to write
 * @returns {import("vite").Plugin}
 */
export function singleFile(name) {
  return {
    name: "single-file",
    enforce: "post",
    // After Vite's own step, which fills in what a lazily loaded part needs.
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const files = Object.values(bundle);
        const page = files.find((file) => file.fileName.endsWith(".html"));
        const [script, style] = [onlyOne(files, ".js"), onlyOne(files, ".css")];
        if (script.imports.length > 0) this.error(`${script.fileName} still imports ${script.imports.join(", ")}`);
        // Neither "</script" nor "<!--" may stand inside a script element.
        const code = script.code
          .replace(/<\/(script)/gi, "\\x3C/$1")
          .replace(/<!--/g, "\\x3C!--")
          .trim();
        const css = String(style.source).trim();
        const allowed = policy(hashOf(code), hashOf(css));
        page.source = String(page.source)
          .replace(/\s*<(script|link)\b[^>]*(?:src|href)="[^"]*\.(?:js|css)"[^>]*>(?:<\/script>)?/g, "")
          .replace(
            /<meta charset="utf-8" ?\/?>/,
            (meta) => `${meta}<meta http-equiv="Content-Security-Policy" content="${allowed}">`,
          )
          .replace("</head>", () => `<style>${css}</style></head>`)
          .replace("</body>", () => `<script type="module">${code}</script></body>`);
        page.fileName = `${name}.html`;
        delete bundle[script.fileName];
        delete bundle[style.fileName];
      },
    },
  };
}

function onlyOne(files, ending) {
  const found = files.filter((file) => file.fileName.endsWith(ending));
  if (found.length !== 1) throw new Error(`single-file: expected one ${ending} file, got ${found.length}`);
  return found[0];
}
