// Walks through pages of a server in a real browser.
//
//   node walk.mjs MODULES < job.json > seen.json
//
// The job: {browser, base, width, height, dark?, scripts?, steps: [{go?, type?: [selector, text], choose?: [selector, value],
// press?, ask?, axe?, png?}]}. A step that presses waits for the page that follows. The answer: {seen: [what each step's script gave, with the
// violations of a checker of accessibility where it was asked], requests, errors, dialogs}.

import { readFileSync } from "node:fs";

import { launch, scheme, timeout, violations, watched } from "./browser.mjs";

const job = JSON.parse(readFileSync(0, "utf8"));
const browser = await launch(job.browser);
try {
    const page = await browser.newPage();
    page.setDefaultTimeout(timeout);
    const { requests, errors } = watched(page);
    const [dialogs, seen] = [[], []];
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
        await scheme(page, step.dark ?? job.dark);
        if (step.go) await page.goto(new URL(step.go, job.base).href, { waitUntil: "load" });
        if (step.type) await page.type(step.type[0], step.type[1]);
        if (step.choose) await page.select(step.choose[0], step.choose[1]);
        if (step.tick) await click(step.tick);
        if (step.press) await Promise.all([page.waitForNavigation({ waitUntil: "load" }), click(step.press)]);
        const result = step.ask ? ((await page.evaluate(step.ask)) ?? null) : null;
        const wrong = step.axe ? await violations(page) : [];
        if (step.png) await page.screenshot({ path: step.png, fullPage: true });
        seen.push({ result, violations: wrong, address: page.url().slice(job.base.length) });
    }
    process.stdout.write(JSON.stringify({ seen, requests, errors, dialogs }));
} finally {
    await browser.close();
}
