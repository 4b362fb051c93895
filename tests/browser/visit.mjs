// Opens a page in a real browser and reports what it saw.
//
//   node visit.mjs MODULES < job.json > seen.json
//
// The job: {browser, file, views: [{width, height, dark, png?, window?, pdf?, keys?, scripts?, script?, axe?}]}. The answer: {views: [{result,
// violations}], requests: [every address that was asked for], errors: [what the page complained of]}.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const modules = createRequire(join(process.argv[2], "package.json"));
const puppeteer = modules("puppeteer-core");
const job = JSON.parse(readFileSync(0, "utf8"));

// Ends what hangs for ever; no machine is so busy that a page takes that long.
const timeout = 600_000;
const browser = await puppeteer.launch({
    executablePath: job.browser,
    timeout,
    protocolTimeout: timeout,
    // Its sandbox needs rights that root or a user in a container has not; the pages are our own. Nor is /dev/shm large there.
    args: ["--font-render-hinting=none", "--disable-gpu", "--no-sandbox", "--disable-dev-shm-usage"],
});
try {
    const page = await browser.newPage();
    page.setDefaultTimeout(timeout);
    const requests = [];
    const errors = [];
    page.on("request", (request) => requests.push(request.url()));
    page.on("pageerror", (error) => errors.push(String(error)));
    page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
    const views = [];
    for (const view of job.views) {
        await page.setViewport({ width: view.width, height: view.height, deviceScaleFactor: view.zoom ?? 1 });
        const scheme = { name: "prefers-color-scheme", value: view.dark ? "dark" : "light" };
        await page.emulateMediaFeatures([scheme]);
        await page.setJavaScriptEnabled(view.scripts ?? true);
        await page.goto(pathToFileURL(job.file).href, { waitUntil: "networkidle0" });
        const seen = { result: null, violations: [] };
        for (const key of view.keys ?? []) {
            const named = /^<(.+)>$/.exec(key);
            await (named ? page.keyboard.press(named[1]) : page.keyboard.type(key));
        }
        if (view.script) {
            seen.result = (await page.evaluate(view.script)) ?? null;
        }
        if (view.axe) {
            await page.evaluate(readFileSync(modules.resolve("axe-core/axe.min.js"), "utf8"));
            const { violations } = await page.evaluate("axe.run()");
            seen.violations = violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes[0].html}`);
        }
        if (view.png) {
            await page.screenshot({ path: view.png, fullPage: !view.window });
        }
        if (view.pdf) {
            await page.pdf({ path: view.pdf, preferCSSPageSize: true, printBackground: true });
        }
        views.push(seen);
    }
    process.stdout.write(JSON.stringify({ views, requests, errors }));
} finally {
    await browser.close();
}
