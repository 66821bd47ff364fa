// One R (webr, base packages) for the whole test run, started at the first question and asked over localhost.
import { createServer, type IncomingMessage } from "node:http";
import type { AddressInfo } from "node:net";
import type { TestProject } from "vitest/node";
import { WebR, type RDouble } from "webr";

declare module "vitest" {
  interface ProvidedContext {
    rAddress: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  let started: Promise<WebR> | undefined;
  let last: Promise<unknown> = Promise.resolve();
  const answer = async (code: string): Promise<number[]> => {
    started ??= start();
    const r = await started;
    const value = await r.evalR(`as.double({${code}\n})`);
    const numbers = [...((await (value as RDouble).toTypedArray()) as Float64Array)];
    await r.destroy(value);
    return numbers;
  };
  const server = createServer((request, response) => {
    void readAll(request).then((code) => {
      // R answers one question at a time.
      last = last
        .then(() => answer(code))
        .then(
          (values) => response.end(JSON.stringify(values.map((v) => (Number.isFinite(v) ? v : String(v))))),
          (error: unknown) => response.writeHead(400).end(String(error)),
        );
    });
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  project.provide("rAddress", `http://127.0.0.1:${(server.address() as AddressInfo).port}`);
  return async () => {
    server.close();
    (await started)?.close();
  };
}

async function start(): Promise<WebR> {
  const r = new WebR({ interactive: false });
  await r.init();
  return r;
}

async function readAll(request: IncomingMessage): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of request) parts.push(part as Buffer);
  return Buffer.concat(parts).toString("utf8");
}
