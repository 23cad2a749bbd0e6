// Installs what is missing before `npm start` and `npm test`; uses only what Node itself brings.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, statSync } from "node:fs";

const run = (command, args) => spawnSync(command, args, { stdio: "inherit" }).status === 0;
const stop = (sentence) => {
  console.error(sentence);
  process.exit(1);
};

const installed = "node_modules/.package-lock.json";
const stale = () => statSync(installed).mtimeMs < statSync("package-lock.json").mtimeMs;
if (!existsSync(installed) || stale()) {
  console.log("Installing the packages (once, about half a minute) ...");
  if (!run("npm", ["ci", "--no-fund", "--no-audit"])) stop("npm ci failed: see its message above.");
}

if (
  process.argv.includes("--browser") &&
  !existsSync("/usr/bin/chromium") &&
  !process.env.LUNGWARD_CHROMIUM
) {
  const wanted =
    "Install Debian's package `chromium`, or set LUNGWARD_CHROMIUM to a Chromium program, then run npm test again.";
  const debian = existsSync("/etc/debian_version") && process.getuid?.() === 0;
  if (!debian) stop(`The browser tests need Chromium. ${wanted}`);
  console.log(`Installing Chromium with apt (${readFileSync("/etc/debian_version", "utf8").trim()}) ...`);
  const done =
    run("apt-get", ["update", "-qq"]) &&
    run("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium"]);
  if (!done) stop(`apt could not install Chromium. ${wanted}`);
}
