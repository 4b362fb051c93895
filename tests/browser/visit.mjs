// Opens a page in a real browser and reports what it saw.
//
//   node visit.mjs MODULES < job.json > seen.json
//
// The job: {browser, file, views: [{width, height, dark, png?, window?, pdf?, keys?, scripts?, script?, axe?}]}. The answer: {views: [{result,
// violations}], requests: [every address that was asked for], errors: [what the page complained of]}.

import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

import { launch, press, scheme, timeout, violations, watched } from "./browser.mjs";

const job = JSON.parse(readFileSync(0, "utf8"));
const browser = await launch(job.browser);
try {
    const page = await browser.newPage();
    page.setDefaultTimeout(timeout);
    const { requests, errors } = watched(page);
    const views = [];
    for (const view of job.views) {
        await page.setViewport({ width: view.width, height: view.height, deviceScaleFactor: view.zoom ?? 1 });
        await scheme(page, view.dark);
        await page.setJavaScriptEnabled(view.scripts ?? true);
        await page.goto(pathToFileURL(job.file).href, { waitUntil: "networkidle0" });
        const seen = { result: null, violations: [] };
        await press(page, view.keys ?? []);
        if (view.script) {
            seen.result = (await page.evaluate(view.script)) ?? null;
        }
        if (view.axe) seen.violations = await violations(page);
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
