// Walks through pages of a server in a real browser.
//
//   node walk.mjs MODULES < job.json > seen.json
//
// The job: {browser, base, width, height, dark?, scripts?, steps: [{go?, type?: [selector, text], choose?: [selector, value],
// press?, ask?, axe?, png?}]}. A step that presses waits for the page that follows. The answer: {seen: [what each step's script gave, with the
// violations of a checker of accessibility where it was asked], requests, errors, dialogs}.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

const modules = createRequire(join(process.argv[2], "package.json"));
const puppeteer = modules("puppeteer-core");
const job = JSON.parse(readFileSync(0, "utf8"));

// Ends what hangs for ever; no machine is so busy that a page takes that long.
const timeout = 600_000;
const browser = await puppeteer.launch({
    executablePath: job.browser,
    timeout,
    protocolTimeout: timeout,
    args: ["--font-render-hinting=none", "--disable-gpu", "--no-sandbox", "--disable-dev-shm-usage"],
});
try {
    const page = await browser.newPage();
    page.setDefaultTimeout(timeout);
    const [requests, errors, dialogs, seen] = [[], [], [], []];
    page.on("request", (request) => requests.push(request.url()));
    page.on("pageerror", (error) => errors.push(String(error)));
    page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
    page.on("dialog", (dialog) => {
        dialogs.push(dialog.message());
        dialog.dismiss();
    });
    await page.setJavaScriptEnabled(job.scripts ?? true);
    // In the middle of the window, where nothing that stays in its place covers it.
    const click = async (selector) => {
        await page.$eval(selector, (element) => element.scrollIntoView({ block: "center" }));
        await page.click(selector);
    };
    for (const step of job.steps) {
        if (step.width) job.width = step.width;
        await page.setViewport({ width: job.width, height: job.height });
        await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: (step.dark ?? job.dark) ? "dark" : "light" }]);
        if (step.go) await page.goto(new URL(step.go, job.base).href, { waitUntil: "load" });
        if (step.type) await page.type(step.type[0], step.type[1]);
        if (step.choose) await page.select(step.choose[0], step.choose[1]);
        if (step.tick) await click(step.tick);
        if (step.press) await Promise.all([page.waitForNavigation({ waitUntil: "load" }), click(step.press)]);
        const result = step.ask ? ((await page.evaluate(step.ask)) ?? null) : null;
        let violations = [];
        if (step.axe) {
            await page.evaluate(readFileSync(modules.resolve("axe-core/axe.min.js"), "utf8"));
            ({ violations } = await page.evaluate("axe.run()"));
            violations = violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes[0].html}`);
        }
        if (step.png) await page.screenshot({ path: step.png, fullPage: true });
        seen.push({ result, violations, address: page.url().slice(job.base.length) });
    }
    process.stdout.write(JSON.stringify({ seen, requests, errors, dialogs }));
} finally {
    await browser.close();
}
