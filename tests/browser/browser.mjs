// How a browser is started, and what is asked of a page in it, for all programs of this folder.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

// Packages of npm lie in a folder of their own.
const modules = createRequire(join(process.argv[2], "package.json"));
const puppeteer = modules("puppeteer-core");
const axe = () => readFileSync(modules.resolve("axe-core/axe.min.js"), "utf8");

// Ends what hangs for ever; no machine is so busy that a page takes that long.
export const timeout = 600_000;

// Chromium by the protocol of its own, Firefox by WebDriver BiDi (W3C). Chromium's sandbox needs rights that root or a user in a
// container has not; the pages are our own. Nor is /dev/shm large there.
export function launch(executablePath, { profile, args = [] } = {}) {
    const isFirefox = executablePath.includes("firefox");
    return puppeteer.launch({
        browser: isFirefox ? "firefox" : "chrome",
        executablePath,
        userDataDir: profile,
        timeout,
        protocolTimeout: timeout,
        args: isFirefox ? args : ["--font-render-hinting=none", "--disable-gpu", "--no-sandbox", "--disable-dev-shm-usage", ...args],
    });
}

// What keeps somebody from using the page, each with its first place.
export async function violations(page) {
    await page.evaluate(axe());
    const { violations: found } = await page.evaluate("axe.run()");
    return found.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes[0].html}`);
}

// Whether the reader prefers dark pages.
export function scheme(page, dark) {
    return page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: dark ? "dark" : "light" }]);
}

// What pages ask for and complain of from now on.
export function watched(page) {
    const seen = { requests: [], errors: [] };
    page.on("request", (request) => seen.requests.push(request.url()));
    page.on("pageerror", (error) => seen.errors.push(String(error)));
    page.on("console", (message) => message.type() === "error" && seen.errors.push(message.text()));
    return seen;
}

// Presses keys, named as `<Tab>`, or types a text.
export async function press(page, keys) {
    for (const key of keys) {
        const named = /^<(.+)>$/.exec(key);
        await (named ? page.keyboard.press(named[1]) : page.keyboard.type(key));
    }
}
