// Holds pages against the HTML standard.
//
//   node validate.mjs MODULES < job.json > faults.json
//
// The job: {pages: [[name, HTML]]}. The answer: {faults: [one line for each]}.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

const modules = createRequire(join(process.argv[2], "package.json"));
const { HtmlValidate } = modules("html-validate");
const job = JSON.parse(readFileSync(0, "utf8"));

// The standard alone: no rules of style.
const checker = new HtmlValidate({ root: true, extends: ["html-validate:standard"] });
const faults = [];
for (const [name, html] of job.pages) {
    const { results } = await checker.validateString(html);
    for (const { line, column, ruleId, message } of results.flatMap((result) => result.messages)) {
        faults.push(`${name}:${line}:${column}: ${message} (${ruleId})`);
    }
}
process.stdout.write(JSON.stringify({ faults }));
