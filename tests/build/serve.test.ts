import { mkdtemp, mkdir, rm, writeFile } from "node:fs/promises";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { serve } from "../../notebooks/build/serve.mjs";

let base: string;
beforeAll(async () => {
  base = await mkdtemp(join(tmpdir(), "denominator-serve-"));
  await mkdir(join(base, "pages", "one"), { recursive: true });
  await writeFile(join(base, "pages", "one", "index.html"), "<p>one</p>");
  await writeFile(join(base, "secret.txt"), "secret");
});
afterAll(() => rm(base, { recursive: true }));

it("serves pages with the policy, and leads from the root to the first", async () => {
  const { port, close } = await serve(join(base, "pages"), { port: 0, home: "/one/" });
  const page = await fetch(`http://127.0.0.1:${port}/`);
  expect(await page.text()).toBe("<p>one</p>");
  expect(page.url).toBe(`http://127.0.0.1:${port}/one/`);
  expect(page.headers.get("content-security-policy")).toBe(
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; worker-src 'self' blob:; connect-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  );
  expect(page.headers.get("x-content-type-options")).toBe("nosniff");
  expect((await fetch(`http://127.0.0.1:${port}/two/`)).status).toBe(404);
  expect((await fetch(`http://127.0.0.1:${port}/one/`, { method: "POST" })).status).toBe(405);
  await close();
});

it("gives nothing from outside its folder, however the path is written", async () => {
  const { port, close } = await serve(join(base, "pages"), { port: 0 });
  for (const path of ["/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt", "/one/../../secret.txt", "/%zz"]) {
    const answer = await raw(port, path);
    expect(answer, path).toMatch(/^HTTP\/1\.1 404 /);
    expect(answer, path).not.toContain("secret\n");
  }
  await close();
});

it("says that a port is taken and takes the next free one", async () => {
  const first = await serve(join(base, "pages"), { port: 0 });
  const said: string[] = [];
  const taken = (port: number, next: number): void => void said.push(`${port} ${next}`);
  const second = await serve(join(base, "pages"), { port: first.port, taken });
  expect(second.port).toBeGreaterThan(first.port);
  expect(said[0]).toBe(`${first.port} ${first.port + 1}`);
  await Promise.all([first.close(), second.close()]);
});

/** A request whose path no client tidies first. */
function raw(port: number, path: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = "";
    const socket = connect(port, "127.0.0.1", () =>
      socket.write(`GET ${path} HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n`),
    );
    socket.on("data", (part) => (text += part.toString()));
    socket.on("end", () => resolve(text));
    socket.on("error", reject);
  });
}
